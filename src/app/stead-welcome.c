/* stead-welcome.c - what a window without a farm shows. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-ui.h"
#include "app/stead-welcome.h"

#define N_RECENT 4

struct _SteadWelcome
{
  GtkWidget  parent_instance;

  GtkWidget *recent;
  GtkWidget *recent_box;
  GtkWidget *demo;
  GtkWidget *demo_spinner;
};

G_DEFINE_FINAL_TYPE (SteadWelcome, stead_welcome, GTK_TYPE_WIDGET)

/* A farm that was open before and is still there. */
static gboolean
is_farm (GtkRecentInfo *info)
{
  return g_str_has_suffix (gtk_recent_info_get_uri (info), ".steading")
         && gtk_recent_info_is_local (info) && gtk_recent_info_exists (info);
}

static int
compare_recent (gconstpointer a,
                gconstpointer b)
{
  return g_date_time_compare (gtk_recent_info_get_modified ((GtkRecentInfo *) b),
                              gtk_recent_info_get_modified ((GtkRecentInfo *) a));
}

static void
add_recent (SteadWelcome  *self,
            GtkRecentInfo *info)
{
  g_autoptr(GFile) file = g_file_new_for_uri (gtk_recent_info_get_uri (info));
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *base = g_file_get_basename (file);
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *name = g_strndup (base, strlen (base) - strlen (".steading"));
  g_autofree char *markup = g_markup_printf_escaped ("<b>%s</b>  <small>%s</small>", name, folder);
  GtkWidget *button = gtk_button_new ();
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_markup (GTK_LABEL (label), markup);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_MIDDLE);
  gtk_button_set_child (GTK_BUTTON (button), label);
  gtk_widget_add_css_class (button, "quiet");
  gtk_widget_add_css_class (button, "recent");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.open-path");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", path);
  stead_ui_name (button, name);
  gtk_box_append (GTK_BOX (self->recent), button);
}

static void
fill_recent (SteadWelcome *self)
{
  GList *items = g_list_sort (gtk_recent_manager_get_items (gtk_recent_manager_get_default ()), compare_recent);
  int n = 0;

  for (GList *l = items; l != NULL && n < N_RECENT; l = l->next)
    if (is_farm (l->data))
      {
        add_recent (self, l->data);
        n++;
      }
  gtk_widget_set_visible (self->recent_box, n > 0);
  g_list_free_full (items, (GDestroyNotify) gtk_recent_info_unref);
}

static void
stead_welcome_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_WELCOME);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_welcome_parent_class)->dispose (object);
}

static void
stead_welcome_class_init (SteadWelcomeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_welcome_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "welcome");
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("stead-welcome.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadWelcome, recent);
  gtk_widget_class_bind_template_child (widget_class, SteadWelcome, recent_box);
  gtk_widget_class_bind_template_child (widget_class, SteadWelcome, demo);
  gtk_widget_class_bind_template_child (widget_class, SteadWelcome, demo_spinner);
}

static void
stead_welcome_init (SteadWelcome *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_recent (self);
}

GtkWidget *
stead_welcome_new (void)
{
  return g_object_new (STEAD_TYPE_WELCOME, NULL);
}

void
stead_welcome_busy (SteadWelcome *self,
                    gboolean      busy)
{
  g_return_if_fail (STEAD_IS_WELCOME (self));

  gtk_widget_set_sensitive (self->demo, !busy);
  gtk_spinner_set_spinning (GTK_SPINNER (self->demo_spinner), busy);
  gtk_widget_set_visible (self->demo_spinner, busy);
}
