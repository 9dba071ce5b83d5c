"""Quantities and money as text, in and out: the only place where units are spelled and converted."""

from scantling.quantities.figure import Figure as Figure
from scantling.quantities.figure import Grade as Grade
from scantling.quantities.parse import parse_figure as parse_figure
from scantling.quantities.plain import CurrentKind as CurrentKind
from scantling.quantities.plain import parse_bool as parse_bool
from scantling.quantities.plain import parse_count as parse_count
from scantling.quantities.plain import parse_current as parse_current
from scantling.quantities.plain import parse_date as parse_date
from scantling.quantities.plain import parse_pieces as parse_pieces
from scantling.quantities.suffixes import UNIT_SUFFIX as UNIT_SUFFIX
from scantling.quantities.suffixes import dimension_of as dimension_of
from scantling.quantities.suffixes import file_name_of as file_name_of
from scantling.quantities.units import DIMENSIONS as DIMENSIONS
from scantling.quantities.units import Dimension as Dimension
from scantling.quantities.units import Unit as Unit
from scantling.quantities.units import canonical_unit as canonical_unit
from scantling.quantities.units import dimension as dimension
