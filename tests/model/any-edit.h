/* any-edit.h - made-up edits, sensible and not, for a project */
#pragma once

#include "model/edit.h"

/* From GLib's test seed. About half of them can be done. */
Edit *any_edit (const Project *project);

/* A copy that shares nothing with the project, not even its walls. */
Project *deep_copy (const Project *project);
