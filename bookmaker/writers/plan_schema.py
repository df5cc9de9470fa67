"""JSON Schema of plan.json: every key described, so that a stranger can redraw and check every sheet."""

from __future__ import annotations

from .plan_json import VERSION
from .room_json import SURFACE
from .schema_parts import Schema, all_of, count, group, listed, number, numbers, of, one, or_null, sides, text, yes

__all__ = ["plan_schema"]


def plan_schema() -> Schema:
    """The schema of plan.json (JSON Schema, draft 2020-12)."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "plan.json of bookmaker",
        "$defs": {"point": POINT, "rect": RECT, "line": LINE, "map": MAP, "thing": THING, "piece": PIECE},
        **group("Everything that is made; lengths in mm, y upwards, the origin at the lower left of a sheet", PLAN),
    }


POINT = numbers("x and y, in mm", 2)
RECT = numbers("x and y of the lower left corner, width and height, in mm", 4)
MAP = numbers("a, b, c, d, e, f of x' = a·x + c·y + e, y' = b·x + d·y + f (ISO 32000-1, 8.3.4)", 6)
LINE = group("A straight line", {"from_mm": one("point", "where it begins"), "to_mm": one("point", "where it ends")})

FOLD = group(
    "A fold, seen from the front",
    {"kind": text("mountain or valley"), "from_mm": one("point", "one end"), "to_mm": one("point", "the other end")},
)
PANEL = group(
    "A part of a piece between its folds",
    {
        "role": text("what it is in the finished thing, such as page or spine"),
        "page": or_null(count("the number of the page that is printed there, from 1")),
        "rect_mm": one("rect", "where it lies on the sheet as its front is seen, whichever face it is printed on"),
        "face": text("front or reverse of the sheet"),
        "head_down": yes("whether its head is down where the piece lies upright"),
        "creep_mm": number("how far the image of the page is moved towards the spine"),
    },
)
MARK = group(
    "A mark on the front where the binding hides it",
    {
        "kind": text("hole for the needle, or collation bar"),
        "rect_mm": one("rect", "where it lies; a hole in its middle"),
    },
)
PIECE = group(
    "A piece to cut out of a sheet, as it lies there and its front is seen",
    {
        "id": text("what it goes by on the shelf"),
        "owner": text("the id of the thing it is a part of"),
        "place": count("which of the pieces of its owner it is, from 1, in the order in which they are put together"),
        "kind": text("what sort of part it is"),
        "name": text("which part it is, as its label says"),
        "turned_deg": count("0, or 90 if it lies turned a quarter counter-clockwise"),
        "outline_mm": all_of("the corners of the cut, counter-clockwise", "point"),
        "holes_mm": listed("openings cut out of it, each by its corners", all_of("corners", "point")),
        "bleed_mm": number("how far print runs past the outline"),
        "folds": listed("its folds", FOLD),
        "panels": listed("its parts", PANEL),
        "marks": listed("what is printed where the binding hides it", MARK),
    }
    | {
        kind: all_of(said, "line")
        for kind, said in (
            ("cuts", "where it is cut again after it is printed"),
            ("trims", "where the bound block is trimmed"),
            ("scores", "where it is scored and not folded"),
            ("perforations", "where it is perforated"),
        )
    },
    optional={
        "book": or_null(count("the index in books of what it belongs to, from 0")),
        "slipcase": or_null(text("the slipcase it belongs to")),
    },
)
SHEET = group(
    "A sheet to print, in the order of the files",
    {
        "file": text("the PDF it is in"),
        "page": count("the page there, from 1"),
        "reverse_page": or_null(count("the page of its reverse")),
        "stock": text("its stock"),
        "printer": or_null(text("its printer or tray, if not the usual one")),
        "size_mm": numbers("width and height of the paper", 2),
        "off_cut": yes("whether it is a partly used sheet"),
        "margins_mm": sides("what the printer leaves white", "left", "right", "top", "bottom"),
        "area_mm": one(
            "rect",
            "what the printer reaches, before calibration; on both sides if both are printed",
        ),
        "turn": text("the edge on which it is turned to print its reverse"),
        "calibration": one("map", "from a point of the plan to the page of the PDF; undoes what the printer does"),
        "to_reverse": or_null(one("map", "from a point seen through the front to the reverse; then follow the others")),
        "reverse_correction": or_null(
            one("map", "makes up for a printer that misses with the reverse; before calibration")
        ),
        "pieces": all_of("what lies on it", "piece"),
        "knife_cuts": all_of("straight cuts from edge to edge that part the pieces, in their order", "line"),
        "crosses": all_of("alignment crosses of a cutting machine", "line"),
    },
)
STOCK = group(
    "A paper or card",
    {
        "name": text("its name"),
        "caliper_mm": number("thickness of one sheet"),
        "tolerance_mm": number("how far that may be off"),
        "film_mm": number("films over its print"),
        "glue_mm": number("a dry film of its glue"),
        "glue_tolerance_mm": number("how far that may be off"),
        "grammage": or_null(number("g/m²")),
        "grain": text("long, short or unknown: the side of the sheet the fibres follow"),
        "size_mm": numbers("width and height of a whole sheet", 2),
    },
)
CUT_PART = group(
    "Something to cut by hand",
    {
        "what": text("what it is"),
        "material": text("of what"),
        "count": count("how many"),
        "height_mm": number("height"),
        "width_mm": number("width"),
        "thickness_mm": number("thickness"),
    },
)
STICK = group(
    "Something to saw off a stick",
    {
        "what": text("what it is"),
        "material": text("of what"),
        "count": count("how many"),
        "length_mm": number("length"),
        "width_mm": number("width"),
        "thickness_mm": number("thickness"),
        "bevels_deg": listed("the angles of its ends", {"type": "number"}),
    },
)
OUTSIDE = ("thickness", "height", "depth")
THING = group(
    "Something that is made",
    {
        "id": text("what it goes by"),
        "space": or_null(text("the space it stands in")),
        "cut_list": listed("what is cut by hand for it", CUT_PART),
    },
    optional={
        "sticks": listed("what is sawn off sticks for it", STICK),
        "title": text("its title"),
        "name": text("what it is called"),
        "kind": text("what sort of thing it is"),
        "look": count("which look its chance gives it"),
        "page_mm": sides("its page", "width", "height"),
        "direction": text("left-to-right or right-to-left"),
        "block_kind": text("how its block is made"),
        "cover_kind": text("how it is covered"),
        "jacket": yes("whether it wears a jacket"),
        "pages": count("printed pages"),
        "panels": count("page-sized parts, with the blank ones"),
        "strips": count("pieces of paper its block is printed on"),
        "block_thickness_mm": number("its block in its cover, with the glue under its ends"),
        "block_alone_mm": number("its block by itself, as computed or as measured"),
        "block_computed_mm": number("its block by itself, as computed"),
        "spine_mm": number("the spine of the flat cover, between its folds"),
        "spine_title": or_null(of("object", "how the title on the spine runs, and how well it is seen")),
        "legibility": or_null(of("object", "how well the text inside is seen")),
        "books": listed("the indices in books of what stands in it, from 0", {"type": "integer"}),
        "slipcase": or_null(text("the slipcase it stands in")),
        "inside_mm": sides("the room inside", "width", "height", "depth"),
        "outside_mm": sides("its outer sides", "width", "height", "depth"),
        "overall_mm": sides("how it stands on the shelf, thickest where turn-ins lie", *OUTSIDE),
        "tolerance_mm": number("how far its thickness may be off"),
        "all_one_way_mm": number("how far it is off if every error goes the same way by its tolerance"),
    },
)
PLACE = group(
    "What stands in one place of a space: one thing, or a stack",
    {
        "things": listed("their ids, from the top of a stack", text("an id")),
        "stack": or_null(text("the name of the stack")),
        "left_mm": number("from the left of the space to the box around it, as it stands or leans"),
        "width_mm": number("how wide that box is"),
        "height_mm": number("how high it is"),
        "lean_deg": number("how far it leans from upright, its head to the left; less than 0 to the right"),
        "pulled_out_mm": number("how far it stands before the others"),
    },
)
SPACE = group(
    "A place on the shelf",
    {
        "name": text("its name"),
        "width_mm": number("clear width"),
        "used_mm": number("what stands there"),
        "clearance_mm": number("play for all of it"),
        "room_left_mm": number("what is left of the width"),
        "verdict": text("fits, tight or over"),
        "all_one_way_mm": number("the sum of all tolerances"),
        "tolerance_mm": number("how far the width may be off"),
        "probability": number("the chance that all fits, in width, height and depth"),
        "wanted_probability": number("how sure it must be to be told that it fits"),
        "places": listed("what stands there, from the left", PLACE),
    },
)
PAPER = group(
    "What the pieces of a stock take",
    {
        "stock": text("the stock"),
        "sheets": count("whole sheets"),
        "off_cuts": count("off-cuts"),
        "least_sheets": count("no layout takes fewer"),
        "sheets_saved": count("against laying the pieces in simple rows"),
        "used": number("the share of the area that pieces with their marks take"),
        "left_over_mm": or_null(numbers("width and height of what one cut leaves of the last sheet", 2)),
    },
)
MEASURED = group(
    "Something that was measured",
    {
        "what": text("what it is"),
        "computed_mm": number("as computed"),
        "measured_mm": number("as measured"),
        "difference_mm": number("measured less computed"),
    },
)
ESTIMATE = group(
    "What measured blocks say of a stock",
    {
        "stock": text("the stock"),
        "blocks": count("how many were measured"),
        "caliper_um": number("its caliper, in µm"),
        "tolerance_um": number("how far that may be off, in µm"),
    },
)
FILM = group(
    "What measured blocks and books say of a glue",
    {
        "glue_um": number("its film as it was written, in µm"),
        "measures": count("how many were measured"),
        "film_um": number("its film as it seems to be, in µm"),
        "tolerance_um": number("how far that may be off, in µm"),
    },
)
PROBLEM = group(
    "Something to know",
    {
        "severity": text("error, warning or note"),
        "thing": or_null(text("the id of what it is about")),
        "file": or_null(text("the file")),
        "line": or_null(count("the line")),
        "column": or_null(count("the column")),
        "field": or_null(text("the key")),
        "message": text("what is wrong"),
        "remedy": or_null(text("what to write instead")),
    },
)
PLAN: Schema = {
    "made_by": {"const": "bookmaker", "description": "what wrote the file"},
    "version": {"const": VERSION, "description": "goes up when a key comes to mean something else or goes away"},
    "files": listed("everything that was written", {"type": "string"}),
    "digests": {
        "type": "object",
        "description": "of each file what it holds, so that changes by others are seen",
        "additionalProperties": {"type": "string"},
    },
    "scale": number("how many times smaller than life"),
    "stocks": listed("the stocks, as they are listed", STOCK),
    "sheets": listed("every sheet, in the order of the files and their pages", SHEET),
    "paper": listed("what the pieces take, by stock", PAPER),
    "shelf": text("the name of the shelf"),
    "books": all_of("the books, as they are listed", "thing"),
    "slipcases": all_of("the slipcases, as they are listed", "thing"),
    "things": all_of("what else is made", "thing"),
    "coverage_factor": {"const": 2, "description": "every tolerance is so many standard deviations (JCGM 100:2008)"},
    "spaces": listed("the places on the shelf", SPACE),
    "surfaces": listed("the walls, desks and floors of the room", SURFACE),
    "measured": listed("what was measured", MEASURED),
    "caliper_estimates": listed("what measured blocks say of their paper", ESTIMATE),
    "film_estimates": listed("what measured blocks and books say of their glue", FILM),
    "problems": listed("what there is to say", PROBLEM),
    "printed": of("object", "what was printed in this run and before, with fingerprints, so that changes are told"),
}
