#include "app/question.h"

#include <glib/gi18n.h>

typedef struct
{
  HbAnswered answered; /* NULL once it was called */
  gpointer data;
} Question;

static void
answer (GtkWindow *window, int which)
{
  Question *question = g_object_get_data (G_OBJECT (window), "question");
  const HbAnswered answered = question->answered;
  const gpointer data = question->data;

  question->answered = NULL;
  gtk_window_destroy (window);
  if (answered)
    answered (which, data);
}

static void
clicked_cb (GtkButton *button, GtkWindow *window)
{
  answer (window, GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "answer")));
}

static gboolean
close_cb (GtkWindow *window)
{
  answer (window, -1);
  return TRUE;
}

static gboolean
escape_cb (GtkWidget *window, GVariant *arguments, gpointer data)
{
  (void) arguments;
  (void) data;
  answer (GTK_WINDOW (window), -1);
  return TRUE;
}

static GtkWidget *
label_new (const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_widget_add_css_class (label, style);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 52);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  return label;
}

static GtkWidget *
buttons_new (GtkWindow *window, const char *const *answers, int danger)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *button = NULL;

  gtk_widget_set_halign (box, GTK_ALIGN_END);
  gtk_widget_set_margin_top (box, 12);
  for (int i = 0; answers[i]; i++)
    {
      button = gtk_button_new_with_mnemonic (answers[i]);
      g_object_set_data (G_OBJECT (button), "answer", GINT_TO_POINTER (i));
      g_signal_connect (button, "clicked", G_CALLBACK (clicked_cb), window);
      if (i == danger)
        gtk_widget_add_css_class (button, "destructive-action");
      gtk_box_append (GTK_BOX (box), button);
    }
  if (button)
    {
      gtk_widget_add_css_class (button, "suggested-action");
      g_object_set_data (G_OBJECT (window), "first", button);
    }
  return box;
}

static void
add_escape (GtkWidget *window)
{
  GtkEventController *shortcuts = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (shortcuts),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                        gtk_callback_action_new (escape_cb, NULL, NULL)));
  gtk_widget_add_controller (window, shortcuts);
}

void
hb_question_ask (GtkWindow *parent, const char *heading, const char *body,
                 const char *const *answers, int danger, HbAnswered answered, gpointer data)
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  Question *question = g_new0 (Question, 1);

  question->answered = answered;
  question->data = data;
  g_object_set_data_full (G_OBJECT (window), "question", question, g_free);
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_modal (GTK_WINDOW (window), TRUE);
  gtk_window_set_resizable (GTK_WINDOW (window), FALSE);
  gtk_window_set_title (GTK_WINDOW (window), heading);
  gtk_widget_add_css_class (window, "halfbond");
  gtk_widget_add_css_class (window, "question");
  gtk_box_append (GTK_BOX (box), label_new (heading, "heading"));
  gtk_box_append (GTK_BOX (box), label_new (body, "body"));
  gtk_window_set_child (GTK_WINDOW (window), box);
  gtk_box_append (GTK_BOX (box), buttons_new (GTK_WINDOW (window), answers, danger));
  gtk_window_set_default_widget (GTK_WINDOW (window),
                                 g_object_get_data (G_OBJECT (window), "first"));
  gtk_window_set_focus (GTK_WINDOW (window), g_object_get_data (G_OBJECT (window), "first"));
  add_escape (window);
  g_signal_connect (window, "close-request", G_CALLBACK (close_cb), NULL);
  gtk_window_present (GTK_WINDOW (window));
}
