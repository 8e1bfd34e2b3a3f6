/* drawing.h - a drawing as a list of marks in millimetres, each with the thing that it stands for
 */
#pragma once

#include <glib.h>

/* A place: x, z in mm of the wall (x right from its left end, z up from the foundation), and from
 * there dx, dy in sheet steps (1/96 inch on paper, one pixel at scale 1 on the screen; right and
 * down), which do not grow with zoom. */
typedef struct
{
  double x, z;
  float dx, dy;
} MarkPoint;

typedef enum
{
  MARK_POLYGON, /* closed, filled and lined as its style says */
  MARK_LINE,    /* open */
  MARK_CIRCLE,  /* points[0], radius in sheet steps */
  MARK_TEXT,    /* at points[0], `anchor`; dropped when `fit` (mm) is too narrow for it */
} MarkKind;

typedef enum
{
  REF_NONE,
  REF_PIECE,     /* a: course, b: number */
  REF_OPENING,   /* id; part */
  REF_WALL,      /* part: an end or the top; in plan its body, id: WallId.n */
  REF_COURSE,    /* a: course; a cell of the storey rod */
  REF_BED,       /* a: course; the joint above it, at the storey rod */
  REF_DIMENSION, /* id of an opening or none; part: which value, see DimensionPart; a: the index
                  * that it asks for; in plan a: WallId.n, b: the length that it shows */
  REF_STEEL,     /* a: course */
  REF_MEETING,   /* of a plan: a, b: WallId.n of the first and the second wall */
  REF_TOP,       /* of a top that is not level: part: TopPart; a: which, see there */
  REF_FOOT,      /* a: which step of the wall's footing, from 0 */
} RefKind;

typedef enum
{
  PART_BODY,
  PART_LEFT,
  PART_RIGHT,
  PART_SILL,
  PART_HEAD, /* of a wall: its top */
  PART_BOTTOM_LEFT,
  PART_BOTTOM_RIGHT,
  PART_TOP_LEFT,
  PART_TOP_RIGHT,
} RefPart;

/* What of a wall's top a hand is at, by Wall.tops. */
typedef enum
{
  TOP_POINT, /* a: its index */
  TOP_LINE,  /* what ends at point a; what begins at the last one where a is their number */
  TOP_STEP,  /* upright, from point a to the next */
} TopPart;

/* What a dimension shows and what typing into it sets. */
typedef enum
{
  DIMENSION_WALL_LENGTH,
  DIMENSION_WALL_HEIGHT,
  DIMENSION_PIER_BEFORE, /* from the opening's left neighbour (or end) to its left jamb: moves it */
  DIMENSION_OPENING_WIDTH,
  DIMENSION_PIER_AFTER, /* last pier: moves the last opening */
  DIMENSION_OPENING_SILL,
  DIMENSION_OPENING_HEIGHT,
  /* With the index of a point of the top, of a line of it (TOP_LINE), of a step of the footing. */
  DIMENSION_TOP_HEIGHT, /* above the wall's zero */
  DIMENSION_TOP_PLACE,  /* from the point before it that is elsewhere, or the end */
  DIMENSION_TOP_PITCH,  /* degrees */
  DIMENSION_FOOT_UP,    /* above the wall's zero */
  DIMENSION_FOOT_PLACE, /* from the wall's left end */
  DIMENSION_TOP_LEVEL,  /* height of a level line (TOP_LINE) above the wall's zero */
  DIMENSION_TOP_AT,     /* of a point from the wall's left end; typed beside the wall only */
} DimensionPart;

typedef struct
{
  RefKind kind;
  guint32 id; /* OpeningId.n, or 0 */
  gint32 part;
  gint32 a, b;
} MarkRef;

gboolean mark_ref_equal (const MarkRef *a, const MarkRef *b);

typedef struct
{
  MarkKind kind;
  gint16 style;  /* Style of theme.h */
  gint16 layer;  /* Layer */
  gint32 course; /* for recording by course; 0: none */
  MarkRef ref;
  guint32 first, n_points;  /* in points */
  guint32 text;             /* offset into texts, for MARK_TEXT */
  float anchor_x, anchor_y; /* 0 left/top .. 1 right/bottom of the text at its point */
  float radius;
  double fit;
  double min_scale; /* the mark is left out at smaller scales, sheet steps per mm; 0: never */
  double max_scale; /* likewise from this scale on; 0: never */
  double line_mm;   /* its line is never thinner than this on the wall: a joint; 0: as the style */
} Mark;

/* Painted in this order. */
typedef enum
{
  LAYER_GROUND,
  LAYER_PIECES,
  LAYER_LABELS,
  LAYER_OPENINGS,
  LAYER_STEEL,
  LAYER_ROD,
  LAYER_TAPE,
  LAYER_DIMENSIONS,
  LAYER_OVERLAY,
  N_LAYERS
} Layer;

typedef struct
{
  GArray *marks;  /* Mark, sorted by layer, stable */
  GArray *points; /* MarkPoint */
  GString *texts; /* NUL-separated; offset 0 is "" */
} Drawing;

Drawing *drawing_new (void);
void drawing_free (Drawing *drawing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Drawing, drawing_free)

/* What the marks of one kind share. */
typedef struct
{
  gint16 style;
  gint16 layer;
  gint32 course;
  MarkRef ref;
  double fit, min_scale, max_scale, line_mm;
} MarkLook;

/* Of a Style and a layer, and nothing else. */
static inline MarkLook
mark_look (int style, Layer layer)
{
  return (MarkLook){ .style = (gint16) style, .layer = (gint16) layer };
}

/* Each adds a mark at the end; drawing_finish() sorts them. The marks returned are the drawing's
 * and good until the next is added. */
Mark *drawing_add (Drawing *drawing, MarkKind kind, const MarkLook *look, const MarkPoint *points,
                   guint n);
/* The corners are a and c, the other two have the x of one and the z of the other. */
Mark *drawing_add_box (Drawing *drawing, const MarkLook *look, MarkPoint a, MarkPoint c);
Mark *drawing_add_line (Drawing *drawing, const MarkLook *look, MarkPoint a, MarkPoint b);
Mark *drawing_add_circle (Drawing *drawing, const MarkLook *look, MarkPoint at, float radius);
Mark *drawing_add_text (Drawing *drawing, const MarkLook *look, MarkPoint at, float anchor_x,
                        float anchor_y, const char *text);
/* Whether the mark is there at that scale. */
gboolean mark_is_at_scale (const Mark *mark, double scale);
/* Sorts by layer, stable. */
void drawing_finish (Drawing *drawing);

static inline const Mark *
drawing_mark (const Drawing *drawing, guint i)
{
  return &g_array_index (drawing->marks, Mark, i);
}
static inline const MarkPoint *
drawing_points (const Drawing *drawing, const Mark *mark)
{
  return &g_array_index (drawing->points, MarkPoint, mark->first);
}
static inline const char *
drawing_text (const Drawing *drawing, const Mark *mark)
{
  return drawing->texts->str + mark->text;
}

/* How wall space lies on the sheet: sheet x = ox + x * scale + dx, y = oy - z * scale + dy. */
typedef struct
{
  double scale; /* sheet steps per mm, > 0 */
  double ox, oy;
} View;

void view_to_sheet (const View *view, const MarkPoint *point, double *sx, double *sy);
void view_to_wall (const View *view, double sx, double sy, double *x, double *z);
/* The same, `factor` times as large, with the sheet place (sx, sy) staying where it is. */
View view_zoomed (const View *view, double factor, double sx, double sy);

/* The topmost mark with a ref under (sx, sy), `reach` steps around it counted for lines and
 * circles; FALSE: none. */
gboolean drawing_pick (const Drawing *drawing, const View *view, double sx, double sy, double reach,
                       MarkRef *out);
