/* forms.h - what pieces between the places of a segment cost
 *
 * All of it is here, so that the loops over places keep it in registers. */
#pragma once

#include "bond/pattern.h"

/* A piece's greatest height, and the length that it must have at the least. */
typedef struct
{
  Length thickest, least;
} Form;

/* The steps of a segment as a piece meets them: by the step that its left face is in and the step
 * that its right end is in. */
typedef struct
{
  const Geometry *geometry;
  gint32 n;
  Form *of;      /* n x n: from step to step */
  gint32 *first; /* by place: the step that a left face there is in */
} Forms;

static inline Forms
forms_new (const Geometry *geometry, const Segment *segment, const GArray *places)
{
  Forms forms = { geometry, segment->n_steps, g_new (Form, segment->n_steps * segment->n_steps),
                  g_new (gint32, MAX (places->len, 1)) };
  const Step *steps = geometry_step (geometry, segment->first_step);
  gint32 at = 0;

  for (gint32 i = 0; i < forms.n; i++)
    {
      gboolean raked = FALSE;
      Length thickest = 0;

      for (gint32 k = i; k < forms.n; k++)
        {
          raked = raked || geometry_slope (geometry, &steps[k]) >= 0;
          thickest = MAX (thickest, steps[k].hi - steps[k].lo);
          forms.of[i * forms.n + k]
              = (Form){ thickest, raked ? geometry->min_raked : geometry->min_piece };
        }
    }
  for (guint i = 0; i < places->len; i++)
    {
      while (at < forms.n - 1 && steps[at].to <= g_array_index (places, Length, i))
        at++;
      forms.first[i] = at;
    }
  return forms;
}

static inline void
forms_clear (Forms *forms)
{
  g_free (forms->of);
  g_free (forms->first);
}

/* Cost of a piece, but for what it owes the rules. */
static inline Cost
forms_cost (const Forms *forms, gint32 first, gint32 last, Length length)
{
  const Geometry *geometry = forms->geometry;
  const Form *form = &forms->of[first * forms->n + last];
  gboolean whole
      = first == last && length == geometry->unit && form->thickest == geometry->unit_height;

  if (length >= form->least && form->thickest >= geometry->min_rip)
    return whole ? 0 : COST_CUT;
  return pattern_form_cost (geometry, length, form->thickest, form->least, whole);
}
