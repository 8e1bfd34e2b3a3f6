/* tool-perpend.h - a perpend that a hand takes, and where it goes: geometry, no widgets
 *
 * A perpend is named by its course and by the face of the piece right of it, which is what a pin
 * fixes. */
#pragma once

#include "app/tool.h"

/* The piece right of the perpend of that course whose right face is at `x`; NULL: no perpend is
 * laid there. */
const Piece *tool_perpend (const Layout *layout, gint32 course, Length x);
/* The piece left of the perpend that is left of that piece; NULL at the beginning of a run. */
const Piece *tool_perpend_left (const Layout *layout, const Piece *right);

/* What lies within `reach` of a place, as the piece right of the perpend; NULL: nothing. Beside
 * short pieces the reach is less, a quarter of the shorter one; when that is less than `least`,
 * perpends are too dense for a hand and there is none. */
const Piece *tool_perpend_at (const Layout *layout, Length x, Length z, Length reach, Length least);

/* ---- where it may rest ---- */

typedef enum
{
  STOP_NONE,        /* a free place */
  STOP_AS_LAID,     /* where it was */
  STOP_WHOLE_LEFT,  /* whole units lie between it and what is fixed left of it */
  STOP_WHOLE_RIGHT, /* likewise, right of it */
  STOP_HALF_BELOW,  /* over the middle of a whole unit of the course below */
  STOP_HALF_ABOVE,  /* under the middle of one of the course above */
  STOP_GRID,        /* in line with a perpend two courses away */
} StopKind;

typedef struct
{
  Length x; /* the face */
  StopKind kind;
} Stop;

/* The places where the perpend at `x` may rest, as the wall is laid: Stop, ascending, one for each
 * place. Fixed are the ends of its run and what is pinned in it. */
GArray *tool_perpend_stops (const Layout *layout, const Wall *wall, const Block *block,
                            gint32 course, Length x);
/* The stop nearest to `x` within the grip's reach; else `x` rounded to its step, and STOP_NONE. */
Stop tool_perpend_rest (const GArray *stops, Length x, const Grip *grip);
/* The first stop left (`direction` -1) or right (1) of `x`; FALSE: there is none. */
gboolean tool_perpend_next_stop (const GArray *stops, Length x, int direction, Stop *out);

/* ---- moving it ---- */

/* The wall with the perpend moved from `x` to `*to`: the pins that fix it are moved or stretched,
 * or a new one is made, last of all, so that of two that contradict each other the one that was
 * there holds. `*to` is put within the wall and so that no pinned piece is less than 1 mm long. The
 * wall as it was when `*to` is `x`, or when two pinned pieces would begin there. */
Wall *tool_move_perpend (const Wall *wall, const Block *block, gint32 course, Length x, Length *to);
/* The wall with the piece left of the perpend `length` long and pinned where it begins; `*to` is
 * where the perpend is then. NULL with TOOL_PIN_ERROR_SHORT below 1 mm, with TOOL_PIN_ERROR_ALONE
 * when no perpend is laid there. */
Wall *tool_set_left_piece (const Wall *wall, const Block *block, const Layout *layout,
                           gint32 course, Length x, Length length, Length *to, GError **error);
/* Takes out all pins that fix it, or pins it. */
Wall *tool_toggle_perpend (const Wall *wall, const Block *block, gint32 course, Length x);
/* Whether a pin fixes it, or says that it is to be there. */
gboolean tool_perpend_is_pinned (const Wall *wall, const Block *block, gint32 course, Length x);
/* The first pin that speaks of it and is not met; NULL: all are. Borrowed from the layout. */
const LaidPin *tool_perpend_unmet (const Layout *layout, const Wall *wall, const Block *block,
                                   gint32 course, Length x);
