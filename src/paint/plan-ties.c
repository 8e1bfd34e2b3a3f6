/* plan-ties.c - ties of butted walls in plan: through the joint, half in either wall */
#include "model/plan-edit.h"
#include "paint/plan-private.h"

/* Nearer to each other on the sheet they would be one blot, steps. */
#define PITCH_LEAST 4.5

/* Through one face of the wall that runs through; `inwards` is the way along the butted wall from
 * it: 1 or -1. */
static void
add_face (PlanScene *scene, const PlanWall *butted, const Ties *ties, gint64 face, int inwards)
{
  const double t = length_to_mm (butted->thickness), u = (double) face / LENGTH_PER_MM;
  const double reach = length_to_mm (TIE_REACH);
  MarkLook look = mark_look (STYLE_TIE, LAYER_ROD);

  look.min_scale = PITCH_LEAST * (ties->abreast + 1) / MAX (t, 1);
  for (gint32 i = 0; i < ties->abreast; i++)
    {
      const double v = t * (i + 1) / (ties->abreast + 1);
      const double leg = ties->kind == TIE_ANGLE ? t / (ties->abreast + 1) / 2 : 0;

      drawing_add_line (
          scene->drawing, &look,
          plan_place (butted->wall, ties->kind == TIE_ANGLE ? u : u - inwards * reach, v, 0, 0),
          plan_place (butted->wall, u + inwards * reach, v, 0, 0));
      if (leg > 0)
        drawing_add_line (scene->drawing, &look, plan_place (butted->wall, u, v, 0, 0),
                          plan_place (butted->wall, u, v + leg, 0, 0));
    }
  if (ties->kind == TIE_MESH)
    for (int end = -1; end <= 1; end += 2)
      drawing_add_line (scene->drawing, &look,
                        plan_place (butted->wall, u + end * reach, t / (ties->abreast + 1), 0, 0),
                        plan_place (butted->wall, u + end * reach,
                                    t * ties->abreast / (ties->abreast + 1), 0, 0));
}

void
plan_add_ties (PlanScene *scene)
{
  for (guint i = 0; i < scene->meetings->len; i++)
    {
      const Meeting *meeting = plan_meeting_at (scene, i);
      const int which = plan_butted (meeting);
      const Ties *ties = plan_ties (scene->input->project, meeting);
      const PlanWall *butted = ties ? plan_wall_of (scene, meeting->wall[which]) : NULL;
      PlanSpan square;

      if (!butted)
        continue;
      square = plan_span (butted->wall, &meeting->box);
      if (square.u0 > 0)
        add_face (scene, butted, ties, square.u0, -1);
      if (square.u1 < butted->wall->length)
        add_face (scene, butted, ties, square.u1, 1);
    }
}
