"""The answers of the neck-angle calculation in words."""

from ..engine.declaration import Said, Work

MEASURED = "dry_fit == 'measured'"

# fmt: off
WORDS: tuple[Work, ...] = (
    Said(
        name="say_pitch", label="Pitch", only_if=MEASURED,
        cases=(
            ("pitch_way == 'nothing'",
             "Nothing to take off for the pitch: within the measuring spread."),
            ("pitch_way == 'off the heel end'",
             "Take {heel_size} off both shoulders at the heel end, running out to nothing at the "
             "board. The neck tilts back and the line rises at the bridge."),
            ("pitch_way == 'off the board end'",
             "Take {heel_size} off both shoulders at the board end, running out to nothing at the "
             "heel cap. The neck tilts forward and the line sinks at the bridge."),
            ("", "Too much is gone to cut more: put a shim {heel_size} thick behind both shoulders "
             "at the heel end, running out to nothing at the board."),
        ),
    ),
    Said(
        name="say_side", label="Side", only_if=MEASURED,
        cases=(
            ("side_way == 'nothing'",
             "Nothing to take off for the side: within the measuring spread."),
            ("side_way == 'off the treble side'",
             "Take {side_size} off the treble shoulder at its outer edge, board to heel, running "
             "out to nothing at the bass edge. The head swings to the treble side, the line at the "
             "bridge to the bass side."),
            ("side_way == 'off the bass side'",
             "Take {side_size} off the bass shoulder at its outer edge, board to heel, running out "
             "to nothing at the treble edge. The head swings to the bass side, the line at the "
             "bridge to the treble side."),
            ("side_way == 'shim on the bass side'",
             "Too much is gone to cut more: put a shim {side_size} thick behind the outer edge "
             "of the bass shoulder."),
            ("", "Too much is gone to cut more: put a shim {side_size} thick behind the outer edge "
             "of the treble shoulder."),
        ),
    ),
    Said(
        name="say_seat", label="Seat", only_if=MEASURED,
        cases=(
            ("seat_way == 'nothing'",
             "Leave the cheeks alone: the board lies on the top, within the measuring spread."),
            ("seat_way == 'pare the cheeks'",
             "Take {cheek_size} off both cheeks of the dovetail alike: the neck comes down by "
             "{seat_size}. The other figures count with that."),
            ("", "The board sits {seat_size} too low: glue a shaving {cheek_size} thick on each "
             "cheek, full length, and fit again."),
        ),
    ),
    Said(
        name="say_shim", label="Shim",
        cases=(
            ("dry_fit == 'not_yet'", "Fit the joint dry on a shim of {shim_wanted}."),
            ("even_way == 'nothing'", "The shim in the joint is right: {shim_wanted}."),
            ("even_way == 'off both shoulders alike'",
             "Put the {shim_wanted} shim in and measure again. If you go by this reading, take "
             "{even_size} more off both shoulders, everywhere alike, as room for the lacquer."),
            ("even_way == 'the neck goes further in'",
             "The shim in the joint is {even_size} too thick: the finished neck goes in by that "
             "much more. Change it for {shim_wanted} and measure again."),
            ("", "The shim in the joint is {even_size} too thick, and too much is gone already: a "
             "packing of that thickness has to go behind both shoulders."),
        ),
    ),
    Said(
        name="say_aim", label="What to fit to",
        cases=(
            ("clearance >= 0",
             "A straightedge on the frets, along the middle, passes {straightedge_height} over the "
             "top at the bridge place; once the bridge is on, {clearance} over the bridge."),
            ("", "A straightedge on the frets, along the middle, passes {straightedge_height} over "
             "the top at the bridge place. That is below the bridge's top ({clearance}): once the "
             "bridge is on, the straightedge stops against it."),
        ),
    ),
    Said(
        name="say_height_spread", label="Straightedge height, 95 %",
        cases=(("", "{height_low} to {height_high}; at worst {height_worst} either way"),),
    ),
    Said(
        name="say_pitch_spread", label="Pitch, 95 %",
        cases=(("", "{pitch_low} to {pitch_high}; at worst {pitch_worst} either way"),),
    ),
    Said(
        name="say_action_spread", label="Action at the 12th, mean, 95 %",
        cases=(("", "{action_low} to {action_high}; at worst {action_worst} either way"),),
    ),
)
# fmt: on
