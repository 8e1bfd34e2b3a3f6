/* scene-private.h - what the parts of an elevation share while they are drawn */
#pragma once

#include "paint/elevation.h"
#include "paint/theme.h"

typedef struct
{
  Drawing *drawing;
  const ElevationInput *input;
  const Wall *wall;
  const Block *block;
  Laying laying;
  const Layout *layout; /* may be NULL while the first one is being made */
  const GArray *foot;   /* MarkPoint: the footing's top; NULL: in the client view */
  gint32 course;        /* the one that rod and tape show; one of the layout's, if it has any */
} Scene;

/* Offsets from the wall, sheet steps. */
#define ROD_LEFT (-64.f)
#define ROD_RIGHT (-38.f)
#define TAPE_TOP 14.f
#define TAPE_BOTTOM 28.f
#define GROUND_DEPTH 48.f
#define DIMENSION_FIRST 18.f /* from the wall to the first chain */
#define DIMENSION_PITCH 24.f /* from chain to chain */
#define HEIGHTS_FIRST 22.f   /* likewise, right of the wall */
#define HEIGHTS_PITCH 46.f

/* Over the top, for the heights of its points, where it is not level. */
#define LEVEL_ROOM 20.f

/* Of a person with the air above the head, mm. */
#define PERSON_HEIGHT 1800.0

Scene scene_new (const ElevationInput *input);

/* The top of the footing along the wall, from its left end: MarkPoint, two at least; at zero where
 * it was not surveyed. New. */
GArray *scene_foot (const Scene *scene);

/* --- face.c --- */

/* The wall's top between two places, and what it stands on: LayPoint from the left, two at least; a
 * step is two of one x. New. */
GArray *face_top (const Wall *wall, Length from, Length to);
GArray *face_foot (const Wall *wall, Length from, Length to);
/* What lies between both. */
void scene_face (Scene *scene, const MarkLook *look, Length from, Length to);
/* A band on the footing so high, and one that begins so far above the top and is so thick, mm. */
void scene_face_foot (Scene *scene, const MarkLook *look, double high);
void scene_face_top (Scene *scene, const MarkLook *look, double up, double thick);
/* A level line where it is within the face: none, one or several. */
void scene_face_line (Scene *scene, const MarkLook *look, Length z);

/* --- the parts --- */

/* Marks of each part, added to the drawing. */
void scene_ground (Scene *scene);
/* The ground under the steps of the footing, above zero; it goes on so far beyond the wall, steps.
 * Its line likewise. */
void scene_steps (Scene *scene, const MarkLook *look, float reach);
void scene_steps_line (Scene *scene, const MarkLook *look, float reach);
/* The levelling bed on it. */
void scene_bed (Scene *scene);
/* After the wall, so that it runs along its foot too. */
void scene_ground_line (Scene *scene);
void scene_pieces (Scene *scene);
void scene_bare_courses (Scene *scene);
void scene_openings (Scene *scene);
void scene_steel (Scene *scene);
/* Ties of this wall where it is butted, and of those that are butted to it. */
void scene_ties (Scene *scene);
void scene_rod (Scene *scene);
void scene_tape (Scene *scene);
void scene_dimensions (Scene *scene);
/* How far the line of a chain of the openings is from the wall, steps; those of the top's points
 * come first, that of the wall's length is the last, after wall_dimension_rows(). */
float scene_chain_away (const Scene *scene, guint row);
/* Of the top's points and slopes, the footing's steps. */
void scene_top_dimensions (Scene *scene);
/* Concrete on the top. */
void scene_cap (Scene *scene);
/* The top of what stands, and how far what was measured is off what was planned. */
void scene_built (Scene *scene);

/* Openings from the left, then from below; Opening * in a new array, borrowed from the wall. */
GPtrArray *wall_openings_sorted (const Wall *wall);
/* Chains of dimensions that the wall's openings need: those that overlap stand in chains of their
 * own. 0 without openings. */
guint wall_dimension_rows (const Wall *wall);
/* Whether the places of the top's points have a chain of their own. */
gboolean wall_has_top_places (const Wall *wall);

/* A dimension from one end to the other of a wall's face. */
typedef struct
{
  Length from, to;
  float away; /* of its line from the wall, steps */
  DimensionPart part;
  guint32 opening; /* or 0 */
  Style text;
  gboolean fixed; /* follows from others; cannot be typed into */
  guint32 point;  /* of the top, from 0, where the part is of one */
} Dimension;
/* Over the wall. */
void scene_dimension_along (Scene *scene, const Dimension *dimension);

/* A piece's polygon, grown to the middle of its joints, so that neighbours share an edge. */
void scene_add_piece (Scene *scene, guint i, const MarkLook *look);

/* A perpend that a hand is at, over all that is laid. */
void scene_perpend (Scene *scene, const PerpendMark *mark);

/* Of the client view: an opening with its frame and glass, a person who stands there. */
void scene_client_opening (Scene *scene, const Opening *opening);
void scene_figure (Scene *scene, double x, double z);

static inline MarkPoint
at (double x, double z)
{
  return (MarkPoint){ x, z, 0, 0 };
}

static inline MarkPoint
at_offset (double x, double z, float dx, float dy)
{
  return (MarkPoint){ x, z, dx, dy };
}

static inline MarkPoint
at_length (Length x, Length z)
{
  return (MarkPoint){ length_to_mm (x), length_to_mm (z), 0, 0 };
}

/* Where all of it ends: the highest place of the top, with the cap on it, mm. */
static inline double
wall_head (const Wall *wall)
{
  return length_to_mm (wall->height + wall->cap.height);
}

static inline MarkRef
ref_of (RefKind kind, guint32 id, gint32 part)
{
  return (MarkRef){ .kind = kind, .id = id, .part = part };
}
