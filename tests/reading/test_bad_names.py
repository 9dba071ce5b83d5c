"""Names that lead nowhere, circles, contradictions and parts of the wrong kind: what only shows across entries."""

from __future__ import annotations

import pytest

SPAN = "  span: 300 mm                       # between the panels\n"
PETG = "  petg: {kind: filament, plastic: PETG, density: 1.27 g/cm3}\n"
CLAMP = "through: [washer, carriage.clamp, washer], into: lock nut,"
MOTOR_JOINT = "through: [washer, panel.thickness],"
ROD_LENGTH = "length: span + 2 * panel.thickness,"
CARRIAGE = "  carriage: {title: Carriage, reference: carriage-block}\n"
BUSHING_STEP = "uses: [carriage, x-bushing],\n"
RODS_STEP = "uses-results: [motor panel, carriage], after: [motor, carriage]"
SEAT = "- {for: x-rod.seat, at: [15 mm, 18 mm], repeat: [[75 mm, 18 mm]], fit: seat, care: yes}"
MATES = "\nmates:\n"
AXES = "\naxes:\n"
STEPS = "\nsteps:\n"

# name: (old, new with « where the fault is, code, words)
CASES = {
    # names
    "unknown reference part": (
        "reference: belt-6}",
        "reference: «belt-9}",
        "READ-30",
        "'belt-9'",
        "did you mean belt-6",
    ),
    "unknown stand-in": ("stand-ins: [rod-8-soft],", "stand-ins: [«rod-8-weak],", "READ-30", "rod-8-soft"),
    "unknown part brought along": (
        "stand-ins: [ply-8],",
        "stand-ins: [{part: ply-8, brings: {M3x13 socket head screw: «2}}],",
        "READ-30",
        "M3x13 socket head screw",
    ),
    "unknown place below": ("on: x-motor,", "on: «x-moter,", "READ-30", "'x-moter'", "x-motor"),
    "unknown place of an axis": ("    motor: x-motor\n", "    motor: «y-motor\n", "READ-30", "the axis 'x'", "x-motor"),
    "unknown guide": ("guide: {rods: x-rod,", "guide: {rods: «x-rods,", "READ-30", "x-rod"),
    "unknown thing moved": ("moves: [carriage,", "moves: [«sledge,", "READ-30", "'sledge'"),
    "unknown axis of a clearance": (
        AXES,
        "\nclearances: {duct: {axis: «y, gap: 3 mm}}\n" + AXES,
        "READ-30",
        "the clearance 'duct' names the axis 'y'",
    ),
    "unknown size of a reach": (
        "\n    guide: {rods: x-rod,",
        "\n    reach: {start: «widht}\n    guide: {rods: x-rod,",
        "READ-37",
        "'widht'",
    ),
    "unknown place of a mate": ("b: x-pulley}", "b: «x-puley}", "READ-30", "the mate 'x-belt-on-pulley'"),
    "unknown place filled": (
        "stand-ins: [ply-8],",
        "stand-ins: [{part: ply-8, also-fills: [«lid]}],",
        "READ-30",
        "'lid'",
    ),
    "unknown place required": (
        "stand-ins: [ply-8],",
        "stand-ins: [{part: ply-8, requires: {lid: «ply-8}}],",
        "READ-30",
        "'lid'",
    ),
    "unknown option required": (
        "stand-ins: [ply-8],",
        "stand-ins: [{part: ply-8, requires: {x-rod: «ply-6}}],",
        "READ-30",
        "no option there",
        "rod-8-hardened, rod-8-soft",
    ),
    "unknown piece mirrored": (
        "pieces: [motor-end, far-end],",
        "pieces: [motor-end, far-end], mirrored: [«left],",
        "READ-30",
        "motor-end, far-end",
    ),
    "unknown place in a step": (BUSHING_STEP, "uses: [«sledge, x-bushing],\n", "READ-30", "the step 'carriage'"),
    "a place twice in a step": (
        BUSHING_STEP,
        "uses: [carriage, carriage],\n",
        "READ-23",
        "'carriage' stands twice",
        "2",
    ),
    "unknown joint in a step": ("joints: [pen-clamp]", "joints: [«pen-clam]", "READ-30", "pen-clamp"),
    "unknown step before": ("after: [rods]", "after: [«rod]", "READ-30", "names the step 'rod'"),
    "unknown result": ("uses-results: [axis]", "uses-results: [«axle]", "READ-30", "no step yields", "axis"),
    "unknown joint of a hole": (
        SEAT,
        SEAT + "\n      - {for: «joint:motor-to-panels, at: [20 mm, 20 mm]}",
        "READ-30",
        "motor-to-panel",
    ),
    "unknown sheet drilled with": (
        "    edge-distance: 5 mm\n",
        "    edge-distance: 5 mm\n    drilled-with: «lid\n",
        "READ-30",
        "names the sheet 'lid'",
    ),
    "accepted of nothing": (
        STEPS,
        "\naccepted:\n  - {code: BELT-03, subject: «axis y, because: it turns slowly}\nsteps:\n",
        "READ-30",
        "an accepted finding",
        "'y'",
    ),
    "accepted without a code": (
        STEPS,
        "\naccepted:\n  - {code: «belt, subject: axis x, because: it is}\nsteps:\n",
        "READ-24",
        "BELT-03",
    ),
    # used by nothing
    "dangling part": (PETG, PETG + "  «spring: {kind: thing, mass: 2 g}\n", "READ-31", "'spring' is used nowhere"),
    "a plastic that nothing is printed in": (
        PETG,
        PETG + "  «pla: {kind: filament, plastic: PLA}\n",
        "READ-31",
        "'pla'",
    ),
    # circles
    "steps in a circle": (
        "yields: motor panel, minutes: 10",
        "after: [belt], yields: motor panel, minutes: 10",
        "READ-32",
        "motor after belt after rods after motor",
    ),
    "a step after itself": ("after: [rods]", "after: [rods, belt]", "READ-32", "belt after belt"),
    "a result used before it is made": (
        BUSHING_STEP,
        BUSHING_STEP.replace("\n", " uses-results: [axis],\n"),
        "READ-32",
        "carriage after rods",
    ),
    "a size of itself": (SPAN, "  span: «span + 3 mm\n", "READ-33", "made of each other: span, span"),
    "sizes in a circle": (SPAN, "  span: «reach - 2 mm\n  reach: span + 2 mm\n", "READ-33", "span, reach, span"),
    "a length through a size": (SPAN, "  span: «x-rod.length - 2 mm\n", "READ-33", "the length of x-rod"),
    "a distance that moves what it measures": (
        "at: [0 mm, 0 mm, 12 mm]",
        "at: [0 mm, 0 mm, x-pulley to panel]",
        "READ-34",
        "x-pulley on x-pulley",
    ),
    "places on each other": (
        "          at: [0 mm, 0 mm, 0 mm], face: x}",
        "          on: «x-pulley, at: [0 mm, 0 mm, 0 mm], face: x}",
        "READ-34",
        "panel on x-pulley on x-motor on panel",
    ),
    # contradictions
    "alike alone": (CARRIAGE, CARRIAGE.replace("block}", "block, alike: «pair}"), "READ-35", "no other place is"),
    "required and forbidden": (
        "stand-ins: [ply-8],",
        "stand-ins: [{part: ply-8, requires: {x-rod: «rod-8-soft}, forbids: {x-rod: rod-8-soft}}],",
        "READ-35",
        "forbids it too",
    ),
    "requires another part of its own place": (
        "stand-ins: [ply-8],",
        "stand-ins: [{part: ply-8, requires: {panel: «ply-6}}],",
        "READ-35",
        "takes itself the part",
    ),
    "fills what it requires": (
        "stand-ins: [ply-8],",
        "stand-ins: [{part: ply-8, also-fills: [x-belt], requires: {x-belt: «belt-6}}],",
        "READ-35",
        "fills 'x-belt' itself",
    ),
    "fills its own place": (
        "stand-ins: [ply-8],",
        "stand-ins: [{part: ply-8, «also-fills: [panel]}],",
        "READ-35",
        "own place",
    ),
    "stand-in twice": ("stand-ins: [ply-8],", "«stand-ins: [ply-8, ply-8],", "READ-38", "2 times"),
    "the reference as a stand-in": ("stand-ins: [ply-8],", "«stand-ins: [ply-6],", "READ-38", "'ply-6'"),
    # sizes
    "no operator": (ROD_LENGTH, "length: span «panel.thickness,", "READ-36", "unexpected", "operator"),
    "an unknown unit in a size": (SPAN, "  span: 300 «furlongs\n", "READ-36", "furlongs", "mm"),
    "a tolerance or a sum": (
        SPAN,
        "  span: «300 mm +0.3 mm -0.1 mm\n",
        "READ-36",
        "tolerance or a sum",
        "+0.3/-0.1 mm",
    ),
    "a tolerance of a name": (
        ROD_LENGTH,
        "length: span «+0.3/-0.1 mm,",
        "READ-36",
        "no size with a tolerance",
        "tolerance: +0.3/-0.1 mm",
    ),
    "a bracket too few": (ROD_LENGTH, "length: 2 * (span + 1 mm«,", "READ-36", "')'"),
    "a length and a number": (ROD_LENGTH, "length: «span + 2,", "READ-36", "give the number a unit"),
    "an area for a length": (
        ROD_LENGTH,
        "length: «span * panel.thickness,",
        "READ-36",
        "neither a length nor a number",
    ),
    "a number for a length": (ROD_LENGTH, "length: «42,", "READ-36", "number where a length is wanted"),
    "divided by nothing": (ROD_LENGTH, "length: span /«,", "READ-36", "missing"),
    "unknown size": (ROD_LENGTH, "length: «spam + 2 mm,", "READ-37", "'spam'", "span"),
    "a place for a size": (ROD_LENGTH, "length: span + «panel,", "READ-37", "panel.thickness"),
    "unknown feature": (
        MOTOR_JOINT,
        "through: [washer, «panel.thicknes],",
        "READ-37",
        "not had by ply-6, ply-8",
        "thickness",
    ),
    "unknown size of a printed part": (CLAMP, CLAMP.replace("carriage.clamp", "«carriage.clip"), "READ-37", "clamp"),
    "distance to nowhere": (SPAN, "  span: «panel to lid\n", "READ-30", "'lid'"),
    # kinds
    "a motor that is none": (
        "    motor: x-motor\n",
        "    motor: «x-belt\n",
        "READ-39",
        "takes a motor",
        "'belt-6' is a belt",
    ),
    "a guide that is none": ("guide: {rods: x-rod,", "guide: {rods: «carriage,", "READ-39", "takes a rod", "printed"),
    "a mate of unfit kinds": ("b: x-bushing.bore", "b: «x-belt.bore", "READ-39", "bushing"),
    "a sheet of no sheet": (
        "\nsheets:\n  panel:\n",
        "\nsheets:\n  «carriage: {outline: drawings/panel.dxf}\n  panel:\n",
        "READ-39",
        "takes a sheet",
    ),
    "a face of no motor": ("for: x-motor.face", "for: «x-belt.face", "READ-39", "takes a motor"),
    # standards
    "a thread that no screw has": (
        "screw: socket head M3, through: [washer, panel",
        "screw: «socket head M7, through: [washer, panel",
        "READ-40",
        "M7",
    ),
    "a screw that is none": (
        "screw: socket head M3, through: [washer, panel",
        "screw: «M3 long, through: [washer, panel",
        "READ-43",
        "head and thread",
    ),
    "a fit of no standard": ("fit: h9,", "fit: «h99,", "READ-41", "99"),
    "a hole's fit for a rod": ("fit: h9,", "fit: «H9,", "READ-41", "write h9"),
    "an unknown belt": (
        "belt-6: {kind: belt, profile: 2 mm round",
        "belt-6: {kind: belt, profile: «2 mm flat",
        "READ-42",
        "2 mm round",
    ),
    "an unknown material": ("fit: h9, material: steel", "fit: h9, material: «steal", "READ-42", "steel"),
    "an unknown plastic": ("plastics: [PETG], infill", "plastics: [PETG, «PEGT], infill", "READ-42", "PETG"),
    # not whole
    "a joint without layers": (CLAMP, "«through: [], into: lock nut,", "READ-43", "has no layers"),
    "a layer of two things": (
        CLAMP,
        "through: [«{washer: plain, thickness: 1 mm}], into: lock nut,",
        "READ-43",
        "layer 1",
    ),
    "a joint into nothing": (CLAMP, "through: [washer], «into: {blind: no},", "READ-43", "into nothing"),
    "a mate with itself": (
        MATES,
        "\nmates:\n  «odd: {kind: shaft in bore, a: x-rod.diameter, b: x-rod.diameter}\n",
        "READ-43",
        "itself",
    ),
    "a chain without a limit": (
        AXES,
        "\nchains:\n  «gap: {terms: [+ span, '- x-bushing.length']}\naxes:\n",
        "READ-43",
        "no limit",
    ),
    "a chain without terms": (AXES, "\nchains:\n  gap: {«terms: [], at-least: 1 mm}\naxes:\n", "READ-43", "no terms"),
    "a chain upside down": (
        AXES,
        "\nchains:\n  gap: {terms: [+ span], at-most: 1 mm, at-least: «2 mm}\naxes:\n",
        "READ-26",
        "swap",
    ),
    "a sheet without a place": (
        "\nsheets:\n  panel:\n",
        "\nsheets:\n  «lid: {outline: drawings/panel.dxf}\n  panel:\n",
        "READ-44",
        "add a place 'lid'",
    ),
    "pieces that do not add up": (
        "pieces: [motor-end, far-end],",
        "pieces: [motor-end, far-end], quantity: «3,",
        "READ-44",
        "2 named",
    ),
    "a hole for what": (SEAT, SEAT + "\n      - {for: «x-rod.end, at: [20 mm, 20 mm]}", "READ-44", "x-rod.seat"),
    "a hole for nobody": (SEAT, SEAT + "\n      - «{at: [20 mm, 20 mm]}", "READ-23", "without a purpose"),
    "a hole of no known fit": ("fit: seat, care", "fit: «seated, care", "READ-24", "seat"),
    "a hole beside the sheet": (
        SEAT,
        SEAT + "\n      - {diameter: 3 mm, «at: [span / 3 + 2 mm, 20 mm]}",
        "READ-45",
        "(102, 20) mm",
        "90 × 90 mm",
    ),
    "a repeated hole beside the sheet": ("[75 mm, 18 mm]]", "«[175 mm, 18 mm]]", "READ-45", "(175, 18) mm"),
    "a moved nothing": (
        "{mass: 60 g ± 10 g, for: pen and its lift}]",
        "«{count: 2}]",
        "READ-44",
        "neither a place nor a mass",
    ),
    # identifiers
    "a place with a blank": (CARRIAGE, CARRIAGE + "  «front lid: {reference: ply-6}\n", "READ-29", "back-panel"),
    "a place called min": (CARRIAGE, CARRIAGE + "  «min: {reference: ply-6}\n", "READ-29", "means something else"),
    "a step with a blank": ("\n  belt: {title", "\n  «last one: {title", "READ-29", "without blanks"),
    "two pieces of one name": (
        "pieces: [motor-end, far-end],",
        "«pieces: [far-end, far-end],",
        "READ-08",
        "two pieces",
    ),
    "an amount of nothing": ("{panel: 1, x-motor: all}", "{panel: «0, x-motor: all}", "READ-23", "no amount"),
    "an amount of some": ("{panel: 1, x-motor: all}", "{panel: 1, x-motor: «some}", "READ-23", "or all"),
}


@pytest.mark.parametrize("name", CASES)
def test_a_name_that_does_not_hold(name, plotter, says):
    old, new, code, *words = CASES[name]
    where = plotter.edit("design.yaml", old, new)
    says(code, where, *words)
