/* laws.c - what holds of every wall that is laid, as assertions */
#include "laws.h"

#include "bond/lay.h"
#include "check-layout.h"

void
law_laid_right (const AnyWall *any, guint64 seed)
{
  g_autofree char *wrong = wall_fault (any->wall, &any->block, NULL);
  g_assert_cmpstr (wrong, ==, NULL);
  g_autoptr (Layout) layout = lay_wall (any->wall, &any->block, NULL);
  g_autofree char *fault = check_layout (any->wall, &any->block, layout);
  if (fault)
    {
      g_autofree char *text = any_wall_text (any->wall, &any->block);
      g_test_message ("wall %" G_GUINT64_FORMAT ": %s", seed, text);
    }
  g_assert_cmpstr (fault, ==, NULL);
}

void
law_same_from_behind (AnyWall *any)
{
  any->wall->laying.given &= ~(guint) LAYING_AIM;
  g_autoptr (Wall) mirror = any_wall_mirror (any->wall);
  g_autoptr (Layout) front = lay_wall (any->wall, &any->block, NULL);
  g_autoptr (Layout) back = lay_wall (mirror, &any->block, NULL);
  const Proof *p = &front->proof, *q = &back->proof;

  g_assert_cmpint (p->breaches_at_least, <=, q->breaches);
  g_assert_cmpint (q->breaches_at_least, <=, p->breaches);
  if (p->breaches == q->breaches)
    {
      g_assert_cmpint (p->cuts_at_least, <=, q->cuts);
      g_assert_cmpint (q->cuts_at_least, <=, p->cuts);
    }
}
