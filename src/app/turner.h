/* turner.h - looks for the best turns of all corners and tees, in the background
 *
 * Needs no display. */
#pragma once

#include "app/document.h"

typedef struct HbTurner HbTurner;
/* `sentence`: what was found, or NULL: it began, or was stopped. `better`: there is something to
 * set. */
typedef void (*HbTurnerTold) (const char *sentence, gboolean better, gpointer data);

HbTurner *hb_turner_new (HbDocument *document, HbTurnerTold told, gpointer data);
void hb_turner_free (HbTurner *turner);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (HbTurner, hb_turner_free)

/* Whether there is a bonded meeting to turn. */
gboolean hb_turner_can (HbTurner *turner);
void hb_turner_start (HbTurner *turner);
void hb_turner_stop (HbTurner *turner);
gboolean hb_turner_is_running (HbTurner *turner);
/* Sets what was found, in one step; nothing when the project is another by now. */
gboolean hb_turner_apply (HbTurner *turner, GError **error);
