/* bound-segment.c - the fewest cuts of a segment of one full height, over all real places */
#include "bond/bound-segment.h"

/* Pieces fall short of m units and joints by `rest` in all; each cut takes 1 .. unit - least. */
static gint32
cuts_for_rest (gint64 rest, gint64 most, gint32 forced, gint32 room)
{
  gint64 cuts = rest == 0 ? 0 : most <= 0 ? NEVER : (rest + most - 1) / most;

  cuts = MAX (cuts, forced);
  return cuts > room || cuts > rest ? NEVER : (gint32) cuts;
}

/* With the fewest pieces that reach from end to end, or with `more` of them than that, up to 2. */
void
bound_plain_states (const Geometry *geometry, const Segment *segment, Length least, gint32 more,
                    gint32 states[N_STATES])
{
  gint64 pitch = geometry->unit + geometry->joint;
  gint64 run = segment->b - segment->a + geometry->joint;
  gint64 fewest = (run + pitch - 1) / pitch;
  gint64 most = geometry->unit - least;

  for (gint32 state = 0; state < N_STATES; state++)
    {
      gint32 whole = (state & 1) + (state >> 1);

      states[state] = NEVER;
      for (gint64 m = MAX (fewest + more, 2); m <= fewest + 2 * more; m++)
        states[state] = MIN (
            states[state], cuts_for_rest (m * pitch - run, most, 2 - whole, (gint32) (m - whole)));
    }
  if (more > 0)
    return;
  if (fewest == 1 && run == pitch)
    states[3] = 0;
  if (fewest == 1 && run != pitch && segment->b - segment->a >= least)
    states[0] = 1;
}
