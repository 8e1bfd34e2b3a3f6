/* edited.h - a project after an edit that must go well */
#pragma once

#include "model/edit.h"

/* Takes both. */
static inline Project *
edited (Project *project, Edit *edit)
{
  g_autoptr (GError) error = NULL;
  Project *next = project_edit (project, edit, &error);

  g_assert_no_error (error);
  edit_free (edit);
  project_unref (project);
  return next;
}
