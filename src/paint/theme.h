/* theme.h - the look of every mark, a row of a table for each */
#pragma once

#include <glib.h>

typedef enum
{
  THEME_LIGHT,
  THEME_DARK,
  THEME_PAPER, /* black-and-white safe, white ground */
  N_THEMES
} Theme;

typedef struct
{
  double r, g, b, a;
} Rgba;

/* Grown by paint as it needs; names say what is drawn, not how. */
typedef enum
{
  STYLE_NONE,
  STYLE_PAPER,
  STYLE_GROUND,
  STYLE_GROUND_LINE,
  STYLE_WALL_OUTLINE,
  STYLE_WALL_BODY,   /* where nothing is laid yet */
  STYLE_BARE_COURSE, /* a bed in a small picture */
  STYLE_PIECE,
  STYLE_PIECE_CUT,
  STYLE_PIECE_BREACH,
  STYLE_PIECE_LABEL,
  STYLE_STANDING,     /* a piece that is laid already */
  STYLE_STANDING_CUT, /* likewise, and cut */
  STYLE_STANDING_LABEL,
  STYLE_STANDING_LINE,  /* the top of what stands */
  STYLE_STANDING_TAB,   /* what is written at it */
  STYLE_DEVIATION,      /* how far something is off what was planned */
  STYLE_DEVIATION_OVER, /* more than it may be */
  STYLE_DEVIATION_MARK, /* the level mark beside it */
  STYLE_DEVIATION_MARK_OVER,
  STYLE_PIN, /* of what was set by hand */
  STYLE_BREACH_LINE,
  STYLE_RETURN,
  STYLE_MOVEMENT_JOINT,
  STYLE_PALLET, /* of blocks, set down before the wall */
  STYLE_PALLET_TEXT,
  STYLE_PACKING,
  STYLE_BED, /* the levelling bed */
  STYLE_CAP, /* concrete on the top */
  STYLE_OPENING_WINDOW,
  STYLE_OPENING_DOOR,
  STYLE_OPENING_VOID,
  STYLE_OPENING_LINE,
  STYLE_OPENING_LABEL,
  STYLE_OPENING_SIZE,
  STYLE_STEEL,
  STYLE_STEEL_LAP,
  STYLE_TIE,     /* along itself */
  STYLE_TIE_END, /* seen on its end */
  STYLE_ROD,
  STYLE_ROD_NUMBER,
  STYLE_ROD_HEIGHT,
  STYLE_ROD_CURRENT, /* the cell of the course that the tape shows */
  STYLE_ROD_CURRENT_NUMBER,
  STYLE_ROD_STEEL,
  STYLE_ROD_BED,     /* a bed without steel */
  STYLE_ROD_BED_HIT, /* unseen: where a bed is clicked */
  STYLE_ROD_MARK,
  STYLE_TAPE,
  STYLE_TAPE_GAP, /* across openings and returns */
  STYLE_TAPE_TICK,
  STYLE_TAPE_NUMBER,
  STYLE_TAPE_LABEL,
  STYLE_DIMENSION_LINE,
  STYLE_DIMENSION_TICK,
  STYLE_DIMENSION_TEXT,
  STYLE_DIMENSION_TOTAL,
  STYLE_FOOT_TEXT, /* at a step of the footing, on the ground */
  STYLE_SELECTED,
  STYLE_SELECTED_TEXT,
  STYLE_HANDLE,
  STYLE_HELD, /* round a handle that the keys move */
  STYLE_HIGHLIGHT,
  STYLE_GUIDE,
  STYLE_GUIDE_TEXT,
  STYLE_GHOST,
  STYLE_FOCUS,
  STYLE_CLIENT_SKY_HIGH,
  STYLE_CLIENT_SKY,
  STYLE_CLIENT_GROUND,
  STYLE_CLIENT_GROUND_LINE,
  STYLE_CLIENT_WALL,
  STYLE_CLIENT_CAP,
  STYLE_CLIENT_MOVEMENT_JOINT,
  STYLE_CLIENT_SHADE,
  STYLE_CLIENT_PLINTH,
  STYLE_CLIENT_FRAME,
  STYLE_CLIENT_GLASS,
  STYLE_CLIENT_GLINT,
  STYLE_CLIENT_REVEAL,
  STYLE_CLIENT_SILL,
  STYLE_CLIENT_DOOR,
  STYLE_CLIENT_DOOR_LINE,
  STYLE_CLIENT_HANDLE,
  STYLE_CLIENT_VOID,
  STYLE_CLIENT_FIGURE,
  STYLE_CLIENT_TITLE,
  STYLE_CLIENT_TEXT,
  STYLE_CLIENT_DIMENSION,
  STYLE_CLIENT_DIMENSION_TEXT,
  STYLE_CLIENT_SCALE_DARK,
  STYLE_CLIENT_SCALE_LIGHT,
  STYLE_CLIENT_SCALE_TEXT,
  STYLE_SHEET_LINE,
  STYLE_SHEET_FRAME,
  STYLE_SHEET_TITLE,
  STYLE_SHEET_TEXT,
  STYLE_SHEET_CAPTION,
  STYLE_STRIP_WHOLE, /* of the courses on paper: a whole unit's length */
  STYLE_STRIP_NUMBER,
  STYLE_STRIP_OVER, /* of a course that is off by more than it may be */
  STYLE_STRIP_NAME,
  STYLE_STRIP_OPENING,
  STYLE_PLAN_WALL,
  STYLE_PLAN_OUTER,   /* the outer face of a wall */
  STYLE_PLAN_FACE,    /* its other faces, and jambs */
  STYLE_PLAN_MEETING, /* the square that two walls share */
  STYLE_PLAN_ODD,     /* joints of course 1, seen from above */
  STYLE_PLAN_EVEN,    /* joints of course 2, under it */
  STYLE_PLAN_GAP,
  STYLE_PLAN_GLASS,
  STYLE_PLAN_ABOVE, /* what is above the cut, and not through the wall's height */
  STYLE_PLAN_NAME,
  STYLE_PLAN_OPENING_NAME,
  STYLE_PLAN_WARNING,       /* of what two walls do not agree on */
  STYLE_PLAN_CORNER,        /* its letter */
  STYLE_PLAN_DIAGONAL,      /* a length across, to square the corners */
  STYLE_PLAN_DIAGONAL_TEXT, /* and how long it is */
  STYLE_PLAN_FLOOR,         /* within an outline that is being typed */
  N_STYLES
} Style;

typedef enum
{
  HATCH_NONE,
  HATCH_DIAGONAL, /* cuts: told apart by more than colour */
  HATCH_CROSS,    /* breaches */
  HATCH_DOTS,     /* mortar */
  HATCH_CONCRETE, /* every second line broken */
} Hatch;

typedef struct
{
  Rgba fill;         /* a 0: not filled; of text: a plate behind it */
  Rgba fill_end;     /* a > 0: the fill runs from `fill` at the top to this at the bottom */
  Rgba line;         /* a 0: not lined; of text: its colour */
  double line_width; /* sheet steps */
  double dash;       /* sheet steps; 0: solid */
  Hatch hatch;
  Rgba hatch_ink;
  double text_size;  /* sheet steps; 0: no text */
  double text_small; /* what it shrinks to before it is dropped; 0: it does not shrink */
  gboolean bold;
} StyleRow;

const StyleRow *theme_row (Theme theme, Style style);
/* "piece-cut": a word for stylesheets. */
const char *theme_style_word (Style style);
