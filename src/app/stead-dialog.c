/* stead-dialog.c - the frame of every dialog that changes one thing. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-dialog.h"
#include "app/stead-level.h"
#include "app/stead-typed.h"
#include "app/stead-ui.h"

/* What of the window below stays free, px: the dialog's own title and buttons, and an edge to tell the two apart. */
#define ROUND_ABOUT 170

typedef struct
{
  SteadDesk         *desk;
  GtkScrolledWindow *slot;
  GtkLabel          *error;
  GtkButton         *remove;
  GtkButton         *leave;
  GtkButton         *save;
  gboolean           fits;   /* as high as what it holds, and no height of its own */
  char              *first;  /* (nullable): what stood in it before anybody typed */
  guint              idle;   /* 0: none */
} SteadDialogPrivate;

enum { PROP_CONTENT = 1, PROP_SAVE_LABEL, PROP_DELETE_LABEL, N_PROPS };

static GParamSpec *props[N_PROPS];

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (SteadDialog, stead_dialog, GTK_TYPE_WINDOW)

static SteadDialogPrivate *
private_of (SteadDialog *self)
{
  return stead_dialog_get_instance_private (self);
}

static void
finish (SteadDialog *self,
        gboolean     done,
        GError      *error)   /* (nullable) */
{
  if (done)
    gtk_window_destroy (GTK_WINDOW (self));
  else if (error != NULL)
    stead_dialog_show_error (self, error->message);
}

static void
save_cb (SteadDialog *self)
{
  g_autoptr(GError) error = NULL;
  gboolean done;

  stead_dialog_show_error (self, NULL);
  done = STEAD_DIALOG_GET_CLASS (self)->save (self, &error);
  finish (self, done, error);
}

static void
remove_cb (SteadDialog *self)
{
  g_autoptr(GError) error = NULL;
  gboolean done;

  stead_dialog_show_error (self, NULL);
  done = STEAD_DIALOG_GET_CLASS (self)->remove (self, &error);
  finish (self, done, error);
}

static void
leave_cb (SteadDialog *self)
{
  gtk_window_destroy (GTK_WINDOW (self));
}

/* --- leaving ------------------------------------------------------------------ */

static gboolean
look_cb (gpointer data)
{
  SteadDialogPrivate *priv = private_of (data);

  priv->idle = 0;
  priv->first = stead_typed_in (GTK_WIDGET (priv->slot));
  return G_SOURCE_REMOVE;
}

/* Whether something would be lost that this dialog could have saved. */
static gboolean
holds_work (SteadDialog *self)
{
  SteadDialogPrivate *priv = private_of (self);
  g_autofree char *now = NULL;

  if (priv->first == NULL || !gtk_widget_get_visible (GTK_WIDGET (priv->save)))
    return FALSE;
  now = stead_typed_in (GTK_WIDGET (priv->slot));
  return !g_str_equal (now, priv->first);
}

/* A key or a corner of the window is soon hit by mistake.  What stands over another dialog
 * goes with that one. */
static gboolean
stead_dialog_close_request (GtkWindow *window)
{
  SteadDialog *self = STEAD_DIALOG (window);

  if (holds_work (self) && !STEAD_IS_DIALOG (gtk_window_get_transient_for (window))
      && stead_desk_leave (private_of (self)->desk, G_OBJECT (self)))
    return TRUE;
  return GTK_WINDOW_CLASS (stead_dialog_parent_class)->close_request (window);
}

/* --- its size and its parts ----------------------------------------------------- */

/* As high as what it holds at its width.  A scrolled window asks for the height without the
 * width, and wrapped text then cuts off the last lines or leaves much of it empty. */
static void
fit_height (SteadDialog *self)
{
  SteadDialogPrivate *priv = private_of (self);
  GtkWidget *content = gtk_scrolled_window_get_child (priv->slot);
  GtkWidget *below = GTK_WIDGET (gtk_window_get_transient_for (GTK_WINDOW (self)));
  int width, height, least, natural;
  int most = MAX (gtk_widget_get_height (below) - ROUND_ABOUT, gtk_scrolled_window_get_max_content_height (priv->slot));

  if (content == NULL || !priv->fits)
    return;
  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  gtk_widget_measure (content, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  gtk_widget_measure (content, GTK_ORIENTATION_VERTICAL, MAX (width, least), NULL, &natural, NULL, NULL);
  gtk_scrolled_window_set_propagate_natural_height (priv->slot, FALSE);
  /* What need not be scrolled needs no focus either. */
  gtk_widget_set_focusable (GTK_WIDGET (priv->slot), natural > most);
  gtk_scrolled_window_set_max_content_height (priv->slot, most);
  gtk_scrolled_window_set_min_content_height (priv->slot, MIN (natural, most));
}

/* What is unfolded in it makes it higher, and lower again when it is folded. */
static void
fit_cb (GtkWidget  *widget,
        const char *action,
        GVariant   *target)
{
  int width, height;

  if (!private_of (STEAD_DIALOG (widget))->fits)
    return;
  fit_height (STEAD_DIALOG (widget));
  gtk_window_get_default_size (GTK_WINDOW (widget), &width, &height);
  gtk_window_set_default_size (GTK_WINDOW (widget), width, -1);
}

static void
set_content (SteadDialog *self,
             GtkWidget   *content)
{
  gtk_widget_set_margin_top (content, 18);
  gtk_widget_set_margin_bottom (content, 6);
  gtk_widget_set_margin_start (content, 18);
  gtk_widget_set_margin_end (content, 18);
  gtk_scrolled_window_set_child (private_of (self)->slot, content);
}

/* Where nothing can be saved, there is nothing to cancel either. */
static void
set_save_label (SteadDialog *self,
                const char  *label)   /* (nullable) */
{
  SteadDialogPrivate *priv = private_of (self);

  gtk_widget_set_visible (GTK_WIDGET (priv->save), label != NULL);
  if (label != NULL)
    gtk_button_set_label (priv->save, label);
  gtk_button_set_label (priv->leave, label != NULL ? _("Cancel") : _("Close"));
}

static void
stead_dialog_set_property (GObject      *object,
                           guint         id,
                           const GValue *value,
                           GParamSpec   *pspec)
{
  SteadDialog *self = STEAD_DIALOG (object);
  SteadDialogPrivate *priv = private_of (self);

  switch (id)
    {
    case PROP_CONTENT:
      if (g_value_get_object (value) != NULL)
        set_content (self, g_value_get_object (value));
      break;
    case PROP_SAVE_LABEL:
      set_save_label (self, g_value_get_string (value));
      break;
    case PROP_DELETE_LABEL:
      gtk_button_set_label (priv->remove, g_value_get_string (value) != NULL ? g_value_get_string (value) : "");
      gtk_widget_set_visible (GTK_WIDGET (priv->remove), g_value_get_string (value) != NULL);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
stead_dialog_dispose (GObject *object)
{
  SteadDialogPrivate *priv = private_of (STEAD_DIALOG (object));

  /* The window lets its child go.  gtk_widget_dispose_template() is for the
   * subclass alone: on GTK 4.8 it looks for the subclass's children here too. */
  g_clear_object (&priv->desk);
  g_clear_handle_id (&priv->idle, g_source_remove);
  g_clear_pointer (&priv->first, g_free);
  G_OBJECT_CLASS (stead_dialog_parent_class)->dispose (object);
}

static void
stead_dialog_class_init (SteadDialogClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = stead_dialog_dispose;
  object_class->set_property = stead_dialog_set_property;
  GTK_WINDOW_CLASS (klass)->close_request = stead_dialog_close_request;
  props[PROP_CONTENT] = g_param_spec_object ("content", NULL, NULL, GTK_TYPE_WIDGET,
                                             G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_SAVE_LABEL] = g_param_spec_string ("save-label", NULL, NULL, NULL,
                                                G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_DELETE_LABEL] = g_param_spec_string ("delete-label", NULL, NULL, NULL,
                                                  G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("stead-dialog.ui"));
  gtk_widget_class_bind_template_child_private (widget_class, SteadDialog, slot);
  gtk_widget_class_bind_template_child_private (widget_class, SteadDialog, error);
  gtk_widget_class_bind_template_child_private (widget_class, SteadDialog, remove);
  gtk_widget_class_bind_template_child_private (widget_class, SteadDialog, leave);
  gtk_widget_class_bind_template_child_private (widget_class, SteadDialog, save);
  gtk_widget_class_bind_template_callback (widget_class, save_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_cb);
  gtk_widget_class_install_action (widget_class, STEAD_DIALOG_FIT, NULL, fit_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
stead_dialog_init (SteadDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

SteadDesk *
stead_dialog_get_desk (SteadDialog *self)
{
  g_return_val_if_fail (STEAD_IS_DIALOG (self), NULL);
  return private_of (self)->desk;
}

void
stead_dialog_present (SteadDialog *self,
                      GtkWidget   *parent,
                      SteadDesk   *desk)
{
  int width, height;

  g_return_if_fail (STEAD_IS_DIALOG (self));
  g_return_if_fail (STEAD_IS_DESK (desk));

  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  private_of (self)->fits = height <= 0;
  g_set_object (&private_of (self)->desk, desk);
  gtk_window_set_transient_for (GTK_WINDOW (self), GTK_WINDOW (gtk_widget_get_root (parent)));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
  stead_level_fields (GTK_WIDGET (self));
  fit_height (self);
  gtk_window_present (GTK_WINDOW (self));
  /* Some are filled once they stand there. */
  if (private_of (self)->idle == 0 && private_of (self)->first == NULL)
    private_of (self)->idle = g_idle_add (look_cb, self);
}

void
stead_dialog_show_error (SteadDialog *self,
                         const char  *text)
{
  SteadDialogPrivate *priv = private_of (self);

  g_return_if_fail (STEAD_IS_DIALOG (self));

  stead_ui_tell (priv->error, text);
}
