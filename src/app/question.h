/* question.h - a modal window with a sentence and a few answers */
#pragma once

#include <gtk/gtk.h>

/* Called once, with the index of the answer; -1: the window was closed, or Escape. */
typedef void (*HbAnswered) (int answer, gpointer data);

/* `answers` is NULL-terminated; the last one stands out and is what Enter gives. `danger` is the
 * index of an answer that loses something; -1: none does. */
void hb_question_ask (GtkWindow *parent, const char *heading, const char *body,
                      const char *const *answers, int danger, HbAnswered answered, gpointer data);
