/* wall.h - one straight wall with its openings, as the designer states it
 *
 * A wall in a project is never changed; edits make a new one. Walls are shared between versions. */
#pragma once

#include "model/built.h"
#include "model/foreign.h"
#include "model/ids.h"
#include "model/laying.h"
#include "model/opening.h"
#include "model/pin.h"
#include "model/tie.h"
#include "model/top.h"

/* The way that a wall runs in plan, from its left end to its right. */
typedef enum
{
  RUNS_EAST,
  RUNS_NORTH,
  RUNS_WEST,
  RUNS_SOUTH,
} Runs;

/* Where a wall stands: its outer face begins there at its left end. Its thickness lies to the left
 * of the way that it runs. */
typedef struct
{
  gboolean given; /* else it stands nowhere */
  Length x, y;    /* to the east and to the north of the plan's origin */
  Runs runs;
} PlanPlace;

/* One step that way: 1, 0 or -1 to the east, and to the north. */
static inline int
runs_east (Runs runs)
{
  return runs == RUNS_EAST ? 1 : runs == RUNS_WEST ? -1 : 0;
}

static inline int
runs_north (Runs runs)
{
  return runs == RUNS_NORTH ? 1 : runs == RUNS_SOUTH ? -1 : 0;
}

/* After a right angle, to the right or to the left. */
static inline Runs
runs_turned (Runs runs, gboolean right)
{
  return (Runs) ((runs + (right ? 3 : 1)) % 4);
}

/* "east" and so on: the words of the file. */
const char *runs_word (Runs runs);
gboolean runs_from_word (const char *word, Runs *out);

/* The courses in which the other wall of a corner, or of a tee, runs through. */
typedef enum
{
  THROUGH_EVEN,
  THROUGH_ODD,
  THROUGH_ALL, /* in every course: this wall is butted to it */
} Through;

static inline gboolean
through_runs (Through through, gint32 course)
{
  return through == THROUGH_ALL || (through == THROUGH_ODD) == (course % 2 == 1);
}

/* "even", "odd", "all": the words of the file. */
const char *through_word (Through through);
gboolean through_from_word (const char *word, Through *out);

/* Whether a corner is there, and when the other wall runs through it. */
typedef struct
{
  gboolean given;      /* the file has this <end> */
  Length ret;          /* return: the other wall's thickness; 0: a free end */
  Through through;     /* where the other wall runs through */
  gboolean has_return; /* return and through are written */
  Foreign foreign;
  Length up_to; /* where the other wall ends above the foundation; 0: all the way up */
  Ties ties;    /* of some meaning only where this wall is butted: THROUGH_ALL */
} End;

/* Whether the other wall reaches into a course whose bottom lies there. */
static inline gboolean
reaches_up (Length up_to, Length bottom)
{
  return up_to == 0 || bottom < up_to;
}

/* Whether the wall stops at the other one in that course, whose bottom lies there. */
static inline gboolean
end_stops (const End *end, gint32 course, Length bottom)
{
  return end->ret > 0 && reaches_up (end->up_to, bottom) && through_runs (end->through, course);
}

/* Where another wall meets this one within its length: a gap, a head joint wider on either side, in
 * the courses in which that wall runs through. */
typedef struct
{
  Length x;   /* that wall's left face, from this wall's left end, > 0 */
  Length ret; /* return: its thickness, > 0 */
  Through through;
  Foreign foreign;
  Length up_to; /* as of an end */
  Ties ties;    /* as of an end; on both sides of the gap */
} Tee;

/* Whether there is a gap in that course, whose bottom lies there. */
static inline gboolean
tee_stops (const Tee *tee, gint32 course, Length bottom)
{
  return reaches_up (tee->up_to, bottom) && through_runs (tee->through, course);
}

/* A movement joint: full height, through all courses, filled with a strip of soft filler, so that
 * no mortar stands beside it. To either side the wall is laid as by itself. */
typedef struct
{
  Length x;     /* its left face, from this wall's left end, > 0 */
  Length width; /* MOVEMENT_JOINT_LEAST .. MOVEMENT_JOINT_MOST */
  char *filler; /* what it is filled with, for people; NULL: nothing was said */
  Foreign foreign;
} MovementJoint;

/* Common practice for aerated concrete, docs/rules.md. */
#define MOVEMENT_JOINT_WIDTH LENGTH_MM (10)
#define MOVEMENT_JOINT_LEAST LENGTH_MM (5)
#define MOVEMENT_JOINT_MOST LENGTH_MM (50)

/* Bars in grooves in the top of a course, or in the joint above it. */
typedef struct
{
  gboolean given;  /* the file has <steel>; else no steel by rule */
  gint32 bars;     /* side by side, 1 .. 20 */
  Length diameter; /* > 0 .. 50 mm */
  gint32 every;    /* in every course that is a multiple of it; 0: none */
  gboolean under_sills;
  gboolean over_heads;
  Length past; /* past an opening, both sides, under sills and over heads */
  Length lap;  /* overlap where a stock length ends */
  guint set;   /* SteelField bits: which attributes the file gives */
  Foreign foreign;
} Steel;

typedef enum
{
  STEEL_BARS = 1 << 0,
  STEEL_DIAMETER = 1 << 1,
  STEEL_EVERY = 1 << 2,
  STEEL_UNDER_SILLS = 1 << 3,
  STEEL_OVER_HEADS = 1 << 4,
  STEEL_PAST = 1 << 5,
  STEEL_LAP = 1 << 6,
} SteelField;

/* Adds a row on one course, or takes it away. */
typedef struct
{
  gint32 course; /* 1-based, 1 .. 10000 */
  gboolean omit;
  Foreign foreign;
} SteelRow;

#define WALL_MAX_OPENINGS 1000
#define WALL_MAX_PINS 5000
#define WALL_MAX_TEES 200
#define WALL_MAX_MOVEMENT_JOINTS 200
/* Blocks that a wall may take, about: beyond them laying it would take too long. */
#define WALL_MAX_BLOCKS 50000
#define WALL_MAX_BLOCKS_A_COURSE 2000

typedef struct
{
  gatomicrefcount refs;
  WallId id;
  char *key;     /* the file's id, unique in the project */
  char *name;    /* may be empty, never NULL */
  BlockId block; /* never none in a project */
  Length length; /* face to face, 50 mm .. 1 km */
  Length height; /* highest top of the blockwork above the foundation, levelling bed included */
  GArray *tops;  /* TopPoint, from the left, two of them at one place at most; none: level */
  GArray *feet;  /* Foot, from the left; none: the foundation is level */
  Cap cap;
  PlanPlace place;
  Laying laying;
  End ends[2];             /* by Side */
  GArray *tees;            /* Tee, in the file's order; none over another or over a return */
  GArray *movement_joints; /* MovementJoint, in the file's order; none over another */
  Steel steel;
  GArray *steel_rows; /* SteelRow, in the file's order, one per course at most */
  GArray *openings;   /* Opening, in the file's order */
  GArray *pins; /* Pin, in the file's order: of two that contradict, the first holds; no two of
                   one course begin at one place */
  Built *built; /* NULL: nothing stands, nothing was measured */
  Foreign foreign;
} Wall;

/* 6000 x 2500 mm, no id, no key, no block, empty name; no steel, no openings. The caller may change
 * it until it is put into a project. */
Wall *wall_new (void);
/* A deep copy that the caller may change. */
Wall *wall_copy (const Wall *wall);
Wall *wall_ref (const Wall *wall);
void wall_unref (Wall *wall);
gboolean wall_equal (const Wall *a, const Wall *b);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Wall, wall_unref)

/* An empty list that owns the Wall * put into it. */
GPtrArray *wall_list_new (void);
/* What people call it: its name, or else its key. Borrowed. */
static inline const char *
wall_called (const Wall *wall)
{
  return *wall->name != '\0' ? wall->name : wall->key;
}

/* Its length in the plan, where walls meet: what was planned, where it was measured since. */
static inline Length
wall_planned_length (const Wall *wall)
{
  const Built *built = wall->built;

  return built && built->given & BUILT_PLANNED_LENGTH ? built->planned_length : wall->length;
}

/* How many courses stand. */
static inline gint32
wall_standing (const Wall *wall)
{
  return wall->built ? wall->built->courses : 0;
}

/* In a wall that the caller may change: longer by that much at one end, as planned and as measured.
 * What is placed along it is not moved: wall_shift(). */
void wall_lengthen (Wall *wall, Side side, Length by);

/* Borrowed; NULL when there is none. */
const Opening *wall_opening (const Wall *wall, OpeningId id);
/* The same in a wall that the caller may change. */
Opening *wall_own_opening (Wall *wall, OpeningId id);
static inline const Opening *
wall_opening_at (const Wall *wall, guint i)
{
  return &g_array_index (wall->openings, Opening, i);
}

static inline const Pin *
wall_pin_at (const Wall *wall, guint i)
{
  return &g_array_index (wall->pins, Pin, i);
}
static inline const Tee *
wall_tee_at (const Wall *wall, guint i)
{
  return &g_array_index (wall->tees, Tee, i);
}

/* The one whose left face is there; NULL: none. */
static inline const Tee *
wall_tee (const Wall *wall, Length x)
{
  for (guint i = 0; i < wall->tees->len; i++)
    if (wall_tee_at (wall, i)->x == x)
      return wall_tee_at (wall, i);
  return NULL;
}

static inline Length
tee_right (const Tee *tee)
{
  return tee->x + tee->ret;
}

static inline const MovementJoint *
wall_movement_joint_at (const Wall *wall, guint i)
{
  return &g_array_index (wall->movement_joints, MovementJoint, i);
}

static inline Length
movement_joint_right (const MovementJoint *joint)
{
  return joint->x + joint->width;
}

/* Which part of the wall a place is in, from 0 at the left: how many movement joints end there or
 * left of it. */
guint wall_part_at (const Wall *wall, Length x);
/* The one whose left face is there, borrowed; NULL: none. */
const MovementJoint *wall_movement_joint (const Wall *wall, Length x);
/* The same in a wall that the caller may change. */
MovementJoint *wall_own_movement_joint (Wall *wall, Length x);
/* In a wall that the caller may change: adds one, or takes the one whose left face is there out,
 * FALSE when there is none. */
void wall_add_movement_joint (Wall *wall, Length x, Length width);
gboolean wall_take_movement_joint (Wall *wall, Length x);

/* The pin that begins there; NULL: none. */
const Pin *wall_pin (const Wall *wall, gint32 course, Length x);
/* In a wall that the caller may change: puts a copy of the pin in the place of the one that begins
 * there, or at the end of the list; takes the one that begins there out, FALSE when there is none.
 */
void wall_put_pin (Wall *wall, const Pin *pin);
gboolean wall_take_pin (Wall *wall, gint32 course, Length x);
/* Moves what is placed along the wall by `by`, for its left end moved: openings, tees, movement
 * joints, pins, what stands, the top and the footing; and its own place in plan the other way, so
 * that all of these stay where they stand. Pins that would begin before the wall are taken out, and
 * so is what lay above it or under it there. In a wall that the caller may change. */
void wall_shift (Wall *wall, Length by);
/* Moves its right end. The end of a slope there goes along where it can; what is beyond it of top
 * and footing is taken out. Likewise. */
void wall_set_length (Wall *wall, Length length);

/* --- top and foot (top.h) --- */

/* Sets a whole top, which the wall owns from now on, and the height that goes with it; NULL: level.
 * Likewise. */
void wall_take_top (Wall *wall, GArray *tops, Length height);

/* Height of the top as it is right or left of a place. */
static inline Length
wall_top_at (const Wall *wall, Length x, Side side)
{
  return wall->tops->len == 0 ? wall->height : top_at (wall->tops, wall->height, x, side);
}
/* The lowest and the highest of it between two places. */
static inline Length
wall_top_lowest (const Wall *wall, Length from, Length to)
{
  return wall->tops->len == 0 ? wall->height : top_lowest (wall->tops, wall->height, from, to);
}
static inline Length
wall_top_highest (const Wall *wall, Length from, Length to)
{
  return wall->tops->len == 0 ? wall->height : top_highest (wall->tops, wall->height, from, to);
}
/* How high the foundation lies there. */
static inline Length
wall_foot_at (const Wall *wall, Length x, Side side)
{
  return wall->feet->len == 0 ? 0 : foot_at (wall->feet, x, side);
}
/* The most that the top is above the foundation between two places. */
Length wall_tallest (const Wall *wall, Length from, Length to);
/* From the foundation to the top between two places, levelling bed included, mm2. */
double wall_face_area (const Wall *wall, Length from, Length to);

/* Defaults of <steel>: 2 bars of 6 mm, every 0, neither sills nor heads, past 600, lap 300; not
 * given. */
Steel steel_default (void);
/* What steel-row says of a course: 1 a row is added, -1 taken away, 0 nothing. */
int wall_steel_row (const Wall *wall, gint32 course);

/* Everything of a wall that is wrong beside a block, as one sentence for people ("Opening W1 leaves
 * the wall by 120 mm on the right."); NULL when nothing is. `block` may be NULL when it is not
 * known. With `opening`, that sets the opening at fault, or none. */
char *wall_fault (const Wall *wall, const Block *block, OpeningId *opening);
