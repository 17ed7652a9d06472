/* stead-said.c - the quiet strip at the bottom: what was saved, with its Undo.
 *
 * Invariant: while the pointer is over it or the focus is in it, it stays.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-said.h"
#include "app/stead-ui.h"

#define STAY_SECONDS 10

struct _SteadSaid
{
  GtkWidget  parent_instance;

  GtkWidget *text;
  GtkWidget *undo;
  GtkWidget *go_on;
  GtkWidget *act;
  GtkWindow *left;        /* (nullable): weak; the dialog that may be gone on with */
  GtkWidget *bar;
  guint      timer;       /* 0: none */
  gboolean   hovered;
  gboolean   focused;
};

G_DEFINE_FINAL_TYPE (SteadSaid, stead_said, GTK_TYPE_WIDGET)

static gboolean
timer_cb (gpointer data)
{
  SteadSaid *self = data;

  self->timer = 0;
  stead_said_hide (self);
  return G_SOURCE_REMOVE;
}

static void
wait_on (SteadSaid *self)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  if (!self->hovered && !self->focused && gtk_widget_get_visible (GTK_WIDGET (self)))
    self->timer = g_timeout_add_seconds (STAY_SECONDS, timer_cb, self);
}

static void
contains_pointer_cb (SteadSaid                *self,
                     GParamSpec               *pspec,
                     GtkEventControllerMotion *motion)
{
  self->hovered = gtk_event_controller_motion_contains_pointer (motion);
  wait_on (self);
}

static void
contains_focus_cb (SteadSaid               *self,
                   GParamSpec              *pspec,
                   GtkEventControllerFocus *focus)
{
  self->focused = gtk_event_controller_focus_contains_focus (focus);
  wait_on (self);
}

static void
drop_left (SteadSaid *self)
{
  GtkWindow *left = self->left;

  g_clear_weak_pointer (&self->left);
  if (left != NULL)
    gtk_window_destroy (left);
}

static void
go_on_cb (SteadSaid *self)
{
  GtkWindow *left = self->left;

  g_clear_weak_pointer (&self->left);
  stead_said_hide (self);
  if (left != NULL)
    gtk_window_present (left);
}

static void
stead_said_dispose (GObject *object)
{
  SteadSaid *self = STEAD_SAID (object);

  drop_left (self);
  g_clear_handle_id (&self->timer, g_source_remove);
  stead_ui_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (stead_said_parent_class)->dispose (object);
}

static void
stead_said_class_init (SteadSaidClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_said_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "said");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_STATUS);
}

static GtkWidget *
make_bar (SteadSaid *self)
{
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *close = stead_ui_icon_button ("stead-close-symbolic", _("Close this message"));

  self->text = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->text), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->text), 0);
  gtk_widget_set_hexpand (self->text, TRUE);
  self->undo = gtk_button_new_with_label (_("Undo"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->undo), "win.undo");
  gtk_widget_set_valign (self->undo, GTK_ALIGN_CENTER);
  self->go_on = gtk_button_new_with_label (_("Go on with it"));
  gtk_widget_set_valign (self->go_on, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (self->go_on, "clicked", G_CALLBACK (go_on_cb), self);
  self->act = gtk_button_new ();
  gtk_widget_set_valign (self->act, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (close, "quiet");
  gtk_widget_set_valign (close, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (close, "clicked", G_CALLBACK (stead_said_hide), self);
  gtk_box_append (GTK_BOX (bar), self->text);
  gtk_box_append (GTK_BOX (bar), self->undo);
  gtk_box_append (GTK_BOX (bar), self->go_on);
  gtk_box_append (GTK_BOX (bar), self->act);
  gtk_box_append (GTK_BOX (bar), close);
  return bar;
}

static void
stead_said_init (SteadSaid *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->bar = make_bar (self);
  gtk_widget_set_parent (self->bar, GTK_WIDGET (self));
  /* Rows of buttons and what is typed begin at the other side: least is covered here. */
  gtk_widget_set_halign (GTK_WIDGET (self), GTK_ALIGN_END);
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_END);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);

  g_signal_connect_swapped (motion, "notify::contains-pointer", G_CALLBACK (contains_pointer_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  g_signal_connect_swapped (focus, "notify::contains-focus", G_CALLBACK (contains_focus_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}

GtkWidget *
stead_said_new (void)
{
  return g_object_new (STEAD_TYPE_SAID, NULL);
}

/**
 * stead_said_show:
 * @text: replaces what stands there
 * @with_undo: whether "Undo" stands beside it
 */
void
stead_said_show (SteadSaid  *self,
                 const char *text,
                 gboolean    with_undo)
{
  g_return_if_fail (STEAD_IS_SAID (self));
  g_return_if_fail (text != NULL);

  drop_left (self);
  gtk_label_set_text (GTK_LABEL (self->text), text);
  stead_ui_name (GTK_WIDGET (self), text);
  gtk_widget_set_visible (self->undo, with_undo);
  gtk_widget_set_visible (self->go_on, FALSE);
  gtk_widget_set_visible (self->act, FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
  wait_on (self);
}

void
stead_said_offer (SteadSaid  *self,
                  const char *text,
                  GtkWindow  *dialog)
{
  g_return_if_fail (GTK_IS_WINDOW (dialog));

  stead_said_show (self, text, FALSE);
  gtk_widget_set_visible (self->go_on, TRUE);
  g_set_weak_pointer (&self->left, dialog);
  gtk_widget_set_visible (GTK_WIDGET (dialog), FALSE);
}

void
stead_said_ask (SteadSaid  *self,
                const char *text,
                const char *label,
                const char *action)
{
  g_return_if_fail (label != NULL && action != NULL);

  stead_said_show (self, text, FALSE);
  gtk_button_set_label (GTK_BUTTON (self->act), label);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->act), action);
  gtk_widget_set_visible (self->act, TRUE);
}

gboolean
stead_said_asks (SteadSaid  *self,
                 const char *text)
{
  g_return_val_if_fail (STEAD_IS_SAID (self), FALSE);
  return gtk_widget_get_visible (GTK_WIDGET (self)) && gtk_widget_get_visible (self->act) &&
         g_str_equal (gtk_label_get_text (GTK_LABEL (self->text)), text);
}

void
stead_said_hide (SteadSaid *self)
{
  g_return_if_fail (STEAD_IS_SAID (self));

  drop_left (self);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  g_clear_handle_id (&self->timer, g_source_remove);
}
