/* beside.h - what windows beside the wall share: their keys, their words */
#pragma once

#include <gtk/gtk.h>

#include "app/document.h"

/* Undo and redo of the project, where no entry takes the keys for itself; Escape and Ctrl+W close
 * the window. */
void hb_beside_add_keys (GtkWindow *window, HbDocument *document);

/* The same in an entry, which would keep undo to itself: what is typed there and does not count yet
 * goes first, by Ctrl+Z or Escape, where `take_back` says that there was some. NULL: nothing counts
 * later than it is typed. */
typedef gboolean (*HbTakeBack) (GtkWidget *entry, gpointer data);
void hb_beside_add_entry_keys (GtkWidget *entry, HbDocument *document, HbTakeBack take_back,
                               gpointer data);

/* A label that wraps, put at the end of the box; `style` is a CSS class or NULL. Borrowed. */
GtkWidget *hb_beside_add_label (GtkBox *box, const char *text, const char *style);
/* A label in one line of a grid, `xalign` as GTK's; likewise. */
GtkWidget *hb_beside_attach_word (GtkGrid *grid, int column, int row, const char *text,
                                  const char *style, float xalign);
/* Takes every child out. */
void hb_beside_empty (GtkWidget *box);

/* Tells a screen reader what a control is, where its text alone does not. */
void hb_beside_name (GtkWidget *widget, const char *name);
