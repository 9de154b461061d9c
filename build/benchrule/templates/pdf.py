"""A template as PDF for ordinary printers: at full size, over as many sheets as it takes."""

import io
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from ezdxf.math import Vec2
from ezdxf.math.clipping import ClippingRect2d
from reportlab.pdfgen.canvas import Canvas  # type: ignore[import-untyped]

from .pdf_foot import BODY, Foot, plain, pt
from .shapes import Point, Template
from .sheets import MARGIN_MM, Joint, Plan, Sheet, plan_sheets

LINES_MM = {"cut": 0.25, "slot": 0.13, "mark": 0.18, "guide": 0.13}
GREYS = {"cut": 0.0, "slot": 0.0, "mark": 0.0, "guide": 0.45}
DASHES_MM = {"guide": (4.0, 1.5, 1.0, 1.5)}
CROSS_MM, RING_MM = 4.0, 1.5  # arm of a join cross, and its ring
JOINT_GREY, JOINT_LINE_MM = 0.35, 0.1


@dataclass(frozen=True)
class _Page:
    """One sheet under way: where the template's places come to lie on the page."""

    canvas: Any
    plan: Plan
    sheet: Sheet

    def at(self, point: Point) -> Point:
        """A place of the template, in points of the page."""
        return (
            pt(MARGIN_MM + point[0] - self.sheet.left_mm),
            pt(MARGIN_MM + self.plan.foot_mm + point[1] - self.sheet.bottom_mm),
        )

    @property
    def corners(self) -> tuple[Point, Point]:
        """The window's lower left and upper right, as places of the template."""
        left, bottom = self.sheet.left_mm, self.sheet.bottom_mm
        return (left, bottom), (
            left + self.plan.window_width_mm,
            bottom + self.plan.window_height_mm,
        )


def to_pdf(
    template: Template,
    paper: str = "a4",
    *,
    instrument: str = "",
    edition: str = "",
    note: str = "",
) -> bytes:
    """The template on ``a4`` or ``letter`` sheets, whichever way up takes fewest.

    ``instrument``, ``edition`` (which handbook, which revision) and ``note`` stand on every sheet.
    The same template gives the same bytes. KeyError for a paper that is not known.
    """
    foot = Foot(template, instrument, edition, note)
    plan = plan_sheets(template, paper, foot.height_mm)
    out = io.BytesIO()
    size = pt(plan.page_width_mm), pt(plan.page_height_mm)
    canvas = Canvas(out, pagesize=size, invariant=1, pageCompression=0)
    canvas.setTitle(plain(": ".join(one for one in (template.title, instrument) if one)))
    canvas.setSubject(plain(edition))
    canvas.setAuthor(plain(note))
    canvas.setCreator("benchrule")
    joints = list(plan.joints())
    for sheet in plan.sheets():
        page = _Page(canvas, plan, sheet)
        _draw_template(page, template)
        _draw_joints(page, joints)
        foot.draw(canvas, plan, sheet)
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def _draw_template(page: _Page, template: Template) -> None:
    canvas = page.canvas
    window = ClippingRect2d(Vec2(page.corners[0]), Vec2(page.corners[1]))
    for stroke in template.strokes:
        canvas.setLineWidth(pt(LINES_MM[stroke.kind]))
        canvas.setStrokeGray(GREYS[stroke.kind])
        canvas.setDash([pt(one) for one in DASHES_MM.get(stroke.kind, ())])
        points = (*stroke.points, stroke.points[0]) if stroke.closed else stroke.points
        for part in window.clip_polyline(Vec2.list(points)):
            _draw_line(page, [(one.x, one.y) for one in part])
    canvas.setDash()
    canvas.saveState()
    _clip(page)
    for label in template.labels:
        x, y = page.at(label.at)
        canvas.saveState()
        canvas.translate(x, y)
        canvas.rotate(label.angle_deg)
        canvas.setFont(BODY, pt(label.size_mm))
        say = {
            "start": canvas.drawString,
            "middle": canvas.drawCentredString,
            "end": canvas.drawRightString,
        }[label.anchor]
        say(0, 0, plain(label.text))
        canvas.restoreState()
    canvas.restoreState()


def _draw_line(page: _Page, points: list[Point]) -> None:
    if len(points) < 2:
        return
    if len(points) == 2:
        page.canvas.line(*page.at(points[0]), *page.at(points[1]))
        return
    path = page.canvas.beginPath()
    path.moveTo(*page.at(points[0]))
    for point in points[1:]:
        path.lineTo(*page.at(point))
    page.canvas.drawPath(path)


def _clip(page: _Page) -> None:
    (left, bottom), (right, top) = page.at(page.corners[0]), page.at(page.corners[1])
    path = page.canvas.beginPath()
    path.rect(left, bottom, right - left, top - bottom)
    page.canvas.clipPath(path, stroke=0, fill=0)


def _draw_joints(page: _Page, joints: Iterable[Joint]) -> None:
    canvas = page.canvas
    canvas.setStrokeGray(JOINT_GREY)
    canvas.setFillGray(JOINT_GREY)
    for joint in joints:
        if page.sheet not in (joint.first, joint.second):
            continue
        canvas.setLineWidth(pt(JOINT_LINE_MM))
        canvas.setDash([pt(1.5), pt(1.0)])
        canvas.line(*page.at(joint.start), *page.at(joint.end))
        canvas.setDash()
        _say_joint(page, joint)
        for letter, place in joint.crosses:
            _draw_cross(page, letter, place)
    canvas.setFillGray(0)
    canvas.setStrokeGray(0)


def _draw_cross(page: _Page, letter: str, place: Point) -> None:
    canvas, (x, y) = page.canvas, page.at(place)
    arm = pt(CROSS_MM)
    canvas.line(x - arm, y, x + arm, y)
    canvas.line(x, y - arm, x, y + arm)
    canvas.circle(x, y, pt(RING_MM))
    canvas.setFont(BODY, pt(2.4))
    canvas.drawString(x + pt(1.7), y + pt(1.2), letter)


def _say_joint(page: _Page, joint: Joint) -> None:
    """What to do at the joint, written along it from its lower or left end."""
    canvas = page.canvas
    is_second = page.sheet == joint.second
    other = joint.first if is_second else joint.second
    name = f"row {other.row + 1}, column {other.column + 1}"
    words = f"cut here, lay on {name}" if is_second else f"{name} comes up to here"
    upright = joint.start[0] == joint.end[0]
    x, y = page.at(joint.start)
    canvas.saveState()
    canvas.translate(x, y)
    if upright:
        canvas.rotate(90)
    canvas.setFont(BODY, pt(1.9))
    # On the part that stays: the strip beyond the line is cut off, or covered.
    canvas.drawString(pt(2.0), pt(-2.0 if is_second else 0.7), words)
    canvas.restoreState()
