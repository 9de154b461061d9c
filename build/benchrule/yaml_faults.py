"""What is wrong with YAML, in words for who has never heard of a YAML token."""

import yaml


def yaml_fault(error: yaml.YAMLError, first_line: int = 1) -> tuple[int, str, str]:
    """The line, what is wrong and what to do; ``first_line`` is where the YAML begins in its file."""
    mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
    line = first_line + (mark.line if mark else 0)
    said = str(getattr(error, "problem", None) or "it cannot be read")
    if "\\t" in said or "tab character" in said:
        return line, "not YAML: a tab stands at the beginning of the line", "indent by spaces only"
    if "<document start>" in said:
        return (
            line, "not YAML: the line begins farther to the left than those above it, which stands "
            "without an id",
            "begin each entry with its id and a colon, and set its fields in by two spaces",
        )  # fmt: skip
    if "mapping values are not allowed" in said:
        return (
            line, "not YAML: a second ':' on the line, or a line set in by a wrong number of spaces",
            "put text that has ': ' in it between quotes, and begin the fields of an entry in one column",
        )  # fmt: skip
    if "block end" in said or "expected ',' or" in said or "could not find expected" in said:
        return (
            line, f"not YAML: the line does not fit those above it ({said})",
            "begin the fields of an entry in one column, and look whether a ':', a quote or a bracket "
            "is missing just above",
        )  # fmt: skip
    return line, f"not YAML: {said}", "mend the YAML"
