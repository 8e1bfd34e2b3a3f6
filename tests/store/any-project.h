/* any-project.h - made-up projects of every shape that a file can say */
#pragma once

#include "model/project.h"

/* From GLib's test seed. Has no project_fault(). */
Project *any_project (void);

/* The example that is installed; freed by the caller. */
char *example_text (gsize *n);
