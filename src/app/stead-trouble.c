/* stead-trouble.c - a farm file that cannot be opened. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-trouble.h"
#include "app/stead-ui.h"
#include "store/stead-rescue.h"
#include "store/stead-store.h"
#include "store/stead-store-error.h"

struct _SteadTrouble
{
  GtkWidget  parent_instance;

  GtkWidget *box;
};

G_DEFINE_FINAL_TYPE (SteadTrouble, stead_trouble, GTK_TYPE_WIDGET)

static const char *
heading (const GError *error)
{
  if (error->domain != STEAD_STORE_ERROR)
    return _("This farm could not be opened");
  switch ((SteadStoreError) error->code)
    {
    case STEAD_STORE_ERROR_NOT_A_FARM: return _("This file is not a farm");
    case STEAD_STORE_ERROR_NEWER:      return _("A newer version of the program made this farm");
    case STEAD_STORE_ERROR_DAMAGED:    return _("This farm file is damaged");
    case STEAD_STORE_ERROR_BUSY:       return _("This farm is being written to elsewhere");
    case STEAD_STORE_ERROR_FULL:       return _("The disk is full");
    case STEAD_STORE_ERROR_NOT_FOUND:  return _("This farm is not where it was");
    case STEAD_STORE_ERROR_READ_ONLY:
    case STEAD_STORE_ERROR_IO:
    case STEAD_STORE_ERROR_INVALID:
    case STEAD_STORE_ERROR_SIGNED:
    case STEAD_STORE_ERROR_CANCELLED:
    default:                           return _("This farm could not be opened");
    }
}

static void
add_line (SteadTrouble *self,
          const char   *text,
          const char   *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  stead_ui_wrap (GTK_LABEL (label));
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 64);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (self->box), label);
}

static void
add_button (GtkWidget  *row,
            const char *label,
            const char *action,
            gboolean    first)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  if (first)
    gtk_widget_add_css_class (button, "primary");
  gtk_box_append (GTK_BOX (row), button);
}

/* The likeliest way on comes first: an earlier day of a damaged farm if there is one,
 * else a rescue; of any other, trying again. */
static void
add_buttons (SteadTrouble *self,
             const char   *path,
             const GError *error)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  g_autoptr(GPtrArray) backups = stead_store_list_backups (path);
  gboolean has_backups = backups != NULL && backups->len > 0;
  gboolean damaged = g_error_matches (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_DAMAGED);

  gtk_widget_set_margin_top (row, 12);
  if (has_backups)
    add_button (row, _("Open an earlier day…"), "win.backups", damaged);
  if (stead_rescue_may_help (error))
    add_button (row, _("Rescue what can be read…"), "win.rescue", damaged && !has_backups);
  add_button (row, _("Try again"), "win.retry", !damaged);
  add_button (row, _("Open another farm…"), "win.open", FALSE);
  add_button (row, _("Start page"), "win.welcome", FALSE);
  gtk_box_append (GTK_BOX (self->box), row);
}

static void
stead_trouble_dispose (GObject *object)
{
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_trouble_parent_class)->dispose (object);
}

static void
stead_trouble_class_init (SteadTroubleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_trouble_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "trouble");
}

static void
stead_trouble_init (SteadTrouble *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_widget_set_halign (self->box, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (self->box, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (self->box, "page-body");
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
stead_trouble_new (const char   *path,
                   const GError *error)
{
  SteadTrouble *self = g_object_new (STEAD_TYPE_TROUBLE, NULL);

  add_line (self, heading (error), "title");
  add_line (self, error->message, "sentence");
  add_line (self, path, "soft");
  add_buttons (self, path, error);
  return GTK_WIDGET (self);
}
