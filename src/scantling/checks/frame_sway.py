"""How far a portal's open legs sway under a push across the sheet, beam estimate; thickness counts by its cube.

Bolted joints make the legs softer than clamped ones: by the share that the design gives, else by the usual one with its
wide band. The setting-up sheet asks for a push of 10 N to measure it.
"""

from __future__ import annotations

from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.checks.inputs import known, or_typical
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.materials import sheet_modulus
from scantling.checks.rule import check_of, part_at
from scantling.checks.subjects import all_of, ident
from scantling.findings import Finding
from scantling.formulas.frame import leg_sway_mm
from scantling.model.kinds import SheetStock
from scantling.quantities import Figure
from scantling.tables.check_limits import check_limit

PERCENT = Figure.exact(100.0)
USUAL_SOFTENING = check_limit("softening of joints")


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    frame = reader.design.frames[name]
    own = frame.joint_softening
    free, width, force, limit = gather(
        lambda: need(frame.leg_free_mm, f"frames.{name}.leg-free"),
        lambda: need(frame.leg_width_mm, f"frames.{name}.leg-width"),
        lambda: need(frame.force_n, f"frames.{name}.force"),
        lambda: need(frame.sway_limit_mm, f"frames.{name}.sway-limit"),
    )
    stock = part_at(reader, frame.panel, SheetStock, f"frames.{name}.panel")
    thickness = reader.derive(feature, frame.panel, "thickness")
    sheet = reader.design.sheets.get(frame.panel)
    upright = sheet is not None and sheet.grain == "y"

    def sway(thickness: float, modulus: float, free: float, width: float, force: float, softening: float) -> float:
        return leg_sway_mm(force, free, width, thickness, modulus, max(1, frame.legs)) * (1 + softening / 100)

    return judge(
        CHECK,
        reader,
        subject,
        rule=sway,
        inputs={
            "thickness": known(f"thickness of {frame.panel}", thickness, "mm"),
            "modulus": sheet_modulus(stock, thickness.value, upright),
            "free": known("free height of a leg", free, "mm"),
            "width": known("width of a leg", width, "mm"),
            "force": known("push", force, "N"),
            "softening": or_typical("softness of bolted joints", own and own * PERCENT, USUAL_SOFTENING * PERCENT, "%"),
        },
        bounds=at_most(limit.value),
        unit="mm",
        because=f"{{force}} push {frame.legs} legs {{width}} wide and {{free}} free, of {stock.material} {{thickness}} "
        "thick with a modulus of {modulus}, by {stiff} where their joints are stiff, and {value} with joints softer by "
        "{softening}; {limit}.",
        mend="a thicker or stiffer sheet, larger gussets, or a back plate",
        also={"stiff": (lambda **f: sway(**f | {"softening": 0.0}), "mm")},
    )


CHECK = check_of(
    _run,
    code="FRAME-01",
    title="Sway of a portal's legs",
    source="beam tables, cantilevers side by side; joints: from memory, no source",
    subjects=all_of("frame", lambda design: design.frames),
)
