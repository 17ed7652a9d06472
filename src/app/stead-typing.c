/* stead-typing.c - which of two undos a key means.
 *
 * GtkText keeps a history of its own, but does not tell whether there is anything in
 * it, and the texts that a program sets are in it too.  So the history is emptied when
 * a field first gets the focus and after each step of the farm: from then on it holds
 * what a person typed.  Whether there was something is seen by trying.
 */
#include "config.h"

#include "app/stead-typing.h"

#include <string.h>

#define STATE "stead-typing"

typedef struct
{
  GtkWindow *window;   /* that this belongs to */
  guint      steps;    /* of the farm, counted from 1 */
  guint      idle;
} Typing;

static void
typing_free (gpointer data)
{
  Typing *typing = data;

  g_clear_handle_id (&typing->idle, g_source_remove);
  g_free (typing);
}

/* The field that is typed in, or NULL. */
static GtkWidget *
field_of (GtkWindow *window)
{
  GtkWidget *focus = gtk_window_get_focus (window);

  return GTK_IS_TEXT (focus) && gtk_editable_get_editable (GTK_EDITABLE (focus)) ? focus : NULL;
}

/* What stands in the field now is where its typing begins. */
static void
begin_typing (Typing *typing)
{
  GtkWidget *field = field_of (typing->window);

  if (field == NULL || GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (field), STATE)) == typing->steps)
    return;
  g_object_set_data (G_OBJECT (field), STATE, GUINT_TO_POINTER (typing->steps));
  /* Switching it off empties the history. */
  gtk_editable_set_enable_undo (GTK_EDITABLE (field), FALSE);
  gtk_editable_set_enable_undo (GTK_EDITABLE (field), TRUE);
}

static gboolean
step_done_cb (gpointer data)
{
  Typing *typing = data;

  typing->idle = 0;
  begin_typing (typing);
  return G_SOURCE_REMOVE;
}

/* Forms are emptied after the step; the next key comes later than this idle. */
static void
changed_cb (GtkWindow *window)
{
  Typing *typing = g_object_get_data (G_OBJECT (window), STATE);

  typing->steps++;
  if (typing->idle == 0)
    typing->idle = g_idle_add_full (G_PRIORITY_HIGH, step_done_cb, typing, NULL);
}

/* Returns: whether the field had something to take back (or, with text.redo, to bring back) */
static gboolean
act_on_field (GtkWidget  *window,
              const char *action)
{
  GtkWidget *field = field_of (GTK_WINDOW (window));
  g_autofree char *before = NULL;

  if (field == NULL)
    return FALSE;
  before = g_strdup (gtk_editable_get_text (GTK_EDITABLE (field)));
  gtk_widget_activate_action (field, action, NULL);
  return strcmp (before, gtk_editable_get_text (GTK_EDITABLE (field))) != 0;
}

static void
undo_here_action (GtkWidget  *window,
                  const char *action,
                  GVariant   *parameter)
{
  if (!act_on_field (window, "text.undo"))
    gtk_widget_activate_action (window, "win.undo", NULL);
}

static void
redo_here_action (GtkWidget  *window,
                  const char *action,
                  GVariant   *parameter)
{
  if (!act_on_field (window, "text.redo"))
    gtk_widget_activate_action (window, "win.redo", NULL);
}

void
stead_typing_install (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.undo-here", NULL, undo_here_action);
  gtk_widget_class_install_action (widget_class, "win.redo-here", NULL, redo_here_action);
}

void
stead_typing_watch (GtkWindow *window,
                    SteadDesk *desk)
{
  Typing *typing = g_new0 (Typing, 1);

  g_return_if_fail (GTK_IS_WINDOW (window) && STEAD_IS_DESK (desk));
  typing->window = window;
  typing->steps = 1;
  g_object_set_data_full (G_OBJECT (window), STATE, typing, typing_free);
  g_signal_connect_swapped (window, "notify::focus-widget", G_CALLBACK (begin_typing), typing);
  g_signal_connect_object (desk, "changed", G_CALLBACK (changed_cb), window, G_CONNECT_SWAPPED);
}
