/* judging.c - one wall under judgement, and the findings so far */
#include "advice/judging.h"

#include "bond/stands.h"

#define SHORT_SPAN LENGTH_MM (1200)
#define SHORT_BEARING LENGTH_MM (100)
#define LONG_BEARING LENGTH_MM (150)

Finding *
judging_add (Judging *judging, const char *rule, Severity severity, char *text, Mend mend)
{
  Finding *finding = g_new0 (Finding, 1);

  finding->rule = rule;
  finding->severity = severity;
  finding->wall = judging->wall->id;
  finding->text = text;
  finding->mend = mend.edit;
  finding->mend_text = mend.text;
  g_ptr_array_add (judging->findings, finding);
  return finding;
}

Finding *
judging_add_of (Judging *judging, const Opening *opening, const char *rule, Severity severity,
                char *text, Mend mend)
{
  Finding *finding = judging_add (judging, rule, severity, text, mend);

  finding->opening = opening->id;
  finding->x = opening->x;
  return finding;
}

static gboolean
keeps_what_stands (const Judging *judging, const Project *mended)
{
  const Wall *wall = project_wall (mended, judging->wall->id);

  return wall == NULL || stands_in (judging->wall, wall, judging->block);
}

Mend
mend_if_possible (const Judging *judging, Edit *edit, char *text)
{
  Mend mend = { edit, text };
  g_autoptr (Project) project = project_edit (judging->project, edit, NULL);

  if (project == NULL || !keeps_what_stands (judging, project))
    mend_clear (&mend);
  return mend;
}

void
mend_clear (Mend *mend)
{
  g_clear_pointer (&mend->edit, edit_free);
  g_clear_pointer (&mend->text, g_free);
}

const char *
opening_called (const Opening *opening)
{
  return *opening->name != '\0' ? opening->name : opening->key;
}

Length
lintel_bearing (const Opening *opening)
{
  return opening->width <= SHORT_SPAN ? SHORT_BEARING : LONG_BEARING;
}
