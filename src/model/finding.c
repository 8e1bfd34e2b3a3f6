/* finding.c - an awkward or broken thing of a design */
#include "model/finding.h"

void
finding_free (Finding *finding)
{
  if (!finding)
    return;
  g_free (finding->text);
  g_free (finding->mend_text);
  edit_free (finding->mend);
  g_free (finding);
}

const char *
severity_word (Severity severity)
{
  static const char *const words[] = {
    [SEVERITY_BREACH] = "breach",
    [SEVERITY_WARNING] = "warning",
    [SEVERITY_NOTE] = "note",
  };

  return words[severity];
}
