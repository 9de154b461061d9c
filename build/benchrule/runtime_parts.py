"""Cuts the calculators into parts, so that a page fetches only those it shows.

What every calculator needs (the engine, the shared sources, the laws that several groups call) is
the core; each group of calculators is a part of its own, with the laws that it alone calls; each
package of a shop's own calculators is one more. The parts are found by reading the imports.
"""

import ast
from collections.abc import Iterable
from dataclasses import dataclass

CORE = "benchrule-calculators"
# Parts of the standard library that no calculation can need: other programs' protocols, tests,
# debuggers, foreign encodings. The rest stays, lest a lazy import find nothing.
LEAVE_OUT = [
    r"encodings/(?!__init__|aliases|utf_8|latin_1|ascii|cp437|idna|unicode_escape|raw_unicode_escape)",
    r"(_pyrepl|curses|dbm|email|ensurepip|idlelib|lib2to3|msilib|multiprocessing|pydoc_data|sqlite3"
    r"|test|tkinter|tomllib|turtledemo|unittest|venv|wsgiref|xml|xmlrpc|html|http|ctypes)/",
    r"(pdb|bdb|doctest|pydoc|mailbox|imaplib|smtplib|ftplib|poplib|nntplib|turtle|optparse|cmd|"
    r"_pyio|pickletools|mailcap|telnetlib|webbrowser|antigravity|this|profile|cProfile|pstats|"
    r"trace|timeit|tabnanny|pyclbr|zipapp|_sysconfigdata.*|netrc|plistlib|configparser|_aix_support|"
    r"_osx_support|_android_support|_ios_support|socketserver|difflib|shelve|fileinput|argparse|"
    r"ipaddress|uuid|calendar|mimetypes|getpass|sched|quopri|getopt|rlcompleter|code|graphlib|"
    r"nturl2path|modulefinder|runpy|symtable|compileall|py_compile)\.py$",
]


@dataclass(frozen=True)
class Part:
    """One wheel: its name, the files in it, and the other parts that it needs (the core apart)."""

    name: str
    files: tuple[str, ...]
    needs: tuple[str, ...] = ()


def cut(sources: dict[str, bytes]) -> list[Part]:
    """The parts of ``sources`` (file name in the archive → text), the core first."""
    modules = {module_of(file): file for file in sources}
    imports = imports_among(sources)
    owner = {module: _owner(file) for module, file in modules.items()}
    callers: dict[str, set[str]] = {}
    for module in modules:
        if owner[module] != CORE:
            for other in closure(module, imports):
                callers.setdefault(other, set()).add(owner[module])
    for module, file in modules.items():
        if _is_law(file) and len(callers.get(module, ())) == 1:
            (owner[module],) = callers[module]
    engine = set().union(
        *(closure(module, imports) for module, name in owner.items() if name == CORE)
    )
    for module in engine & {module for module, file in modules.items() if _is_law(file)}:
        owner[module] = CORE
    names = sorted(set(owner.values()) - {CORE})
    return [
        Part(
            name,
            tuple(file for module, file in modules.items() if owner[module] == name),
            () if name == CORE else tuple(sorted(_needs(name, owner, imports))),
        )
        for name in (CORE, *names)
    ]


def only_needed(sources: dict[str, bytes], calculators: set[str]) -> dict[str, bytes]:
    """The sources without the groups of ours that none of ``calculators`` (modules) rests on."""
    modules = {module_of(file): file for file in sources}
    imports = imports_among(sources)
    wanted = {module for module, file in modules.items() if _owner(file) == CORE}
    wanted |= {module for module in modules if module.startswith("calculators.learning")}
    wanted |= calculators
    for module in tuple(wanted):
        wanted |= closure(module, imports)
    wanted |= {module.rpartition(".")[0] for module in wanted}  # the __init__ of each group
    wanted |= {module for module in modules if module.partition(".")[0] != "calculators"}
    return {file: text for file, text in sources.items() if module_of(file) in wanted}


def _needs(name: str, owner: dict[str, str], imports: dict[str, set[str]]) -> set[str]:
    reached = set().union(*(closure(m, imports) for m, own in owner.items() if own == name))
    return {owner[module] for module in reached} - {CORE, name}


def _owner(file: str) -> str:
    """The part a file belongs to by where it stands; laws are dealt out afterwards."""
    package, *folders, _ = file.split("/")
    if package != "calculators":
        return f"shop-calculators-{package.replace('_', '-')}"
    group = folders[0] if folders else ""
    return CORE if group in ("", "engine", "laws") else f"{CORE}-{group.replace('_', '-')}"


def _is_law(file: str) -> bool:
    return file.startswith("calculators/laws/") and not file.endswith("__init__.py")


def module_of(file: str) -> str:
    """The name under which a file of an archive is imported."""
    return file.removesuffix(".py").removesuffix("/__init__").replace("/", ".")


def imports_among(sources: dict[str, bytes]) -> dict[str, set[str]]:
    """Which of the modules of ``sources`` each of them imports."""
    modules = {module_of(file): file for file in sources}
    return {
        module: set(_imports(module, file, sources[file], modules))
        for module, file in modules.items()
    }


def closure(module: str, imports: dict[str, set[str]]) -> set[str]:
    """All that a module imports, and what that imports."""
    found: set[str] = set()
    todo = [module]
    while todo:
        for other in imports[todo.pop()] - found:
            found.add(other)
            todo.append(other)
    return found


def _imports(module: str, file: str, text: bytes, known: dict[str, str]) -> Iterable[str]:
    """The modules among ``known`` that a file imports."""
    package = module if file.endswith("/__init__.py") else module.rpartition(".")[0]
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            base = package.split(".")[: len(package.split(".")) - node.level + 1]
            stem = ".".join([*(base if node.level else []), *filter(None, [node.module])])
            names = [stem, *(f"{stem}.{alias.name}" for alias in node.names)]
        else:
            continue
        yield from (name for name in names if name in known)
