/* stead-chart-menu.c - a chart's menu: its picture into the clipboard or a file. */
#include "config.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#include "app/stead-chart-area-private.h"
#include "app/stead-chart-picture.h"
#include "app/stead-files.h"

#define PICTURE_WIDTH 960
#define PICTURE_HEIGHT 540

static GtkWidget *
make_menu (SteadChartArea *self)
{
  g_autoptr(GMenu) model = g_menu_new ();
  GtkWidget *menu;

  g_menu_append (model, _("Copy picture"), "chart.copy");
  g_menu_append (model, _("Save picture as PNG…"), "chart.save::png");
  g_menu_append (model, _("Save picture as SVG…"), "chart.save::svg");
  g_menu_append (model, _("Save picture as PDF…"), "chart.save::pdf");
  menu = gtk_popover_menu_new_from_model (G_MENU_MODEL (model));
  gtk_popover_set_has_arrow (GTK_POPOVER (menu), FALSE);
  gtk_widget_set_halign (menu, GTK_ALIGN_START);
  gtk_widget_set_parent (menu, GTK_WIDGET (self));
  return menu;
}

static void
show_menu (SteadChartArea *self,
           double          x,
           double          y)
{
  if (self->menu == NULL)
    self->menu = make_menu (self);
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu),
                               &(GdkRectangle) { (int) x, (int) y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

static void
pressed_cb (SteadChartArea *self,
            int             n_press,
            double          x,
            double          y)
{
  show_menu (self, x, y);
}

static void
menu_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  show_menu (STEAD_CHART_AREA (widget), gtk_widget_get_width (widget) / 2.0,
             gtk_widget_get_height (widget) / 2.0);
}

/* The chart's style on paper-like ground: light, at the usual size of text. */
static SteadDrawStyle
picture_style (SteadChartArea *self)
{
  SteadDrawStyle style;

  stead_chart_area_get_style (self, NULL, &style);
  style.scheme = STEAD_SCHEME_LIGHT;
  style.font_size = 13;
  return style;
}

static void
copy_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  SteadChartArea *self = STEAD_CHART_AREA (widget);
  SteadDrawStyle style = picture_style (self);
  g_autoptr(GdkTexture) texture = NULL;

  if (self->paint == NULL)
    return;
  texture = stead_chart_picture_texture (self->paint, self->data, &style,
                                         PICTURE_WIDTH, PICTURE_HEIGHT);
  gdk_clipboard_set_texture (gtk_widget_get_clipboard (widget), texture);
}

typedef struct
{
  SteadChartArea     *area;
  SteadPictureFormat  format;
} Saving;

static gboolean
save_to (SteadChartArea      *self,
         SteadPictureFormat   format,
         const char          *path,
         GError             **error)
{
  SteadDrawStyle style = picture_style (self);
  g_autoptr(GBytes) bytes =
    stead_chart_picture_bytes (self->paint, self->data, &style, PICTURE_WIDTH, PICTURE_HEIGHT,
                               format, self->label, self->sentence, error);
  gsize size;
  const char *data;

  if (bytes == NULL)
    return FALSE;
  data = g_bytes_get_data (bytes, &size);
  return g_file_set_contents_full (path, data, (gssize) size,
                                   G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                   0600, error);
}

static void
save_chosen_cb (const char *path,
                gpointer    data)
{
  g_autofree Saving *saving = data;
  g_autoptr(SteadChartArea) self = saving->area;
  g_autofree char *full = NULL;
  g_autoptr(GError) error = NULL;
  const char *ending = stead_picture_ending (saving->format);

  if (path == NULL || self->paint == NULL)
    return;
  full = g_str_has_suffix (path, ending) ? g_strdup (path) : g_strconcat (path, ending, NULL);
  if (!save_to (self, saving->format, full, &error))
    stead_files_tell (GTK_WIDGET (self), _("The picture was not saved."), error->message);
}

static void
save_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  static const char * const formats[] = { "png", "svg", "pdf", NULL };
  SteadChartArea *self = STEAD_CHART_AREA (widget);
  SteadPictureFormat format;
  g_autofree char *file = NULL;
  Saving *saving;
  int i = 0;

  while (formats[i] != NULL && !g_str_equal (formats[i], g_variant_get_string (parameter, NULL)))
    i++;
  g_return_if_fail (formats[i] != NULL);
  format = (SteadPictureFormat) i;
  file = g_strconcat (self->file_name, stead_picture_ending (format), NULL);
  saving = g_new (Saving, 1);
  *saving = (Saving) { g_object_ref (self), format };
  stead_files_save (widget, _("Save picture"), file, save_chosen_cb, saving);
}

void
stead_chart_area_install_menu (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "chart.copy", NULL, copy_action);
  gtk_widget_class_install_action (widget_class, "chart.save", "s", save_action);
  gtk_widget_class_install_action (widget_class, "chart.menu", NULL, menu_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F10, GDK_SHIFT_MASK, "chart.menu", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Menu, 0, "chart.menu", NULL);
}

void
stead_chart_area_add_menu (SteadChartArea *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}
