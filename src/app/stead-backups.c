/* stead-backups.c - the dated copies of a farm. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-backups.h"
#include "app/stead-ui.h"
#include "store/stead-store.h"

struct _SteadBackups
{
  GtkWindow  parent_instance;

  GtkWidget *list;
  GtkWidget *none;
  GtkWidget *scrolled;
};

enum
{
  SIGNAL_LOOK,
  SIGNAL_RESTORE,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadBackups, stead_backups, GTK_TYPE_WINDOW)

/* The window goes first, so that what follows stands over the right one. */
static void
answer (SteadBackups *self,
        GtkWidget    *button,
        guint         signal)
{
  g_autofree char *path = g_strdup (g_object_get_data (G_OBJECT (button), "path"));
  g_autoptr(SteadBackups) kept G_GNUC_UNUSED = g_object_ref (self);

  gtk_window_close (GTK_WINDOW (self));
  g_signal_emit (self, signals[signal], 0, path);
}

static void
look_cb (SteadBackups *self,
         GtkWidget    *button)
{
  answer (self, button, SIGNAL_LOOK);
}

static void
restore_cb (SteadBackups *self,
            GtkWidget    *button)
{
  answer (self, button, SIGNAL_RESTORE);
}

static GtkWidget *
make_button (SteadBackups *self,
             const char   *label,
             const char   *name,
             const char   *path,
             GCallback     clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  g_object_set_data_full (G_OBJECT (button), "path", g_strdup (path), g_free);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  stead_ui_name (button, name);
  return button;
}

static GtkWidget *
make_words (const SteadBackup *backup,
            const char        *day)
{
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *title = gtk_label_new (day);
  GtkWidget *detail = gtk_label_new (backup->monthly ? _("kept for its month") : _("before the first change of that day"));

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_label_set_xalign (GTK_LABEL (detail), 0);
  gtk_widget_add_css_class (title, "strong");
  gtk_widget_add_css_class (detail, "soft");
  gtk_box_append (GTK_BOX (words), title);
  gtk_box_append (GTK_BOX (words), detail);
  gtk_widget_set_hexpand (words, TRUE);
  return words;
}

static void
add_backup (SteadBackups      *self,
            const SteadBackup *backup)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  g_autofree char *day = stead_day_format (backup->day, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: %s is a day. */
  g_autofree char *look = g_strdup_printf (_("Look at %s"), day);
  /* Translators: %s is a day. */
  g_autofree char *restore = g_strdup_printf (_("Go back to %s"), day);

  gtk_widget_add_css_class (row, "due");
  gtk_box_append (GTK_BOX (row), make_words (backup, day));
  gtk_box_append (GTK_BOX (row), make_button (self, _("Look at it"), look, backup->path, G_CALLBACK (look_cb)));
  gtk_box_append (GTK_BOX (row), make_button (self, _("Go back to it"), restore, backup->path, G_CALLBACK (restore_cb)));
  gtk_box_append (GTK_BOX (self->list), row);
}

static void
stead_backups_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_BACKUPS);
  G_OBJECT_CLASS (stead_backups_parent_class)->dispose (object);
}

static void
stead_backups_class_init (SteadBackupsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_backups_dispose;
  signals[SIGNAL_LOOK] = g_signal_new ("look", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[SIGNAL_RESTORE] = g_signal_new ("restore", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("stead-backups.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadBackups, list);
  gtk_widget_class_bind_template_child (widget_class, SteadBackups, none);
  gtk_widget_class_bind_template_child (widget_class, SteadBackups, scrolled);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
stead_backups_init (SteadBackups *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
stead_backups_new (GtkWindow  *parent,
                   const char *path)
{
  SteadBackups *self = g_object_new (STEAD_TYPE_BACKUPS, "transient-for", parent, NULL);
  g_autoptr(GPtrArray) backups = stead_store_list_backups (path);

  for (guint i = 0; i < backups->len; i++)
    {
      if (i > 0)
        gtk_box_append (GTK_BOX (self->list), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
      add_backup (self, backups->pdata[i]);
    }
  gtk_widget_set_visible (self->none, backups->len == 0);
  gtk_widget_set_visible (self->scrolled, backups->len > 0);
  return GTK_WIDGET (self);
}
