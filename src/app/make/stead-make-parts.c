/* stead-make-parts.c - small widgets that the parts of Make share. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/make/stead-make-parts.h"

#include "app/stead-ui.h"
#include "core/stead-core-error.h"

GtkWidget *
stead_make_label (const char *text,
                  const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  stead_ui_wrap (GTK_LABEL (label));
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

GtkWidget *
stead_make_figure (const char *text,
                   const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 1);
  gtk_widget_add_css_class (label, "figure");
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

void
stead_make_say (GtkLabel   *label,
                const char *text,
                gboolean    markup)
{
  if (markup)
    gtk_label_set_markup (label, text != NULL ? text : "");
  else
    gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && *text != '\0');
}

void
stead_make_clear (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    {
      if (GTK_IS_LIST_BOX (box))
        gtk_list_box_remove (GTK_LIST_BOX (box), child);
      else if (GTK_IS_GRID (box))
        gtk_grid_remove (GTK_GRID (box), child);
      else
        gtk_box_remove (GTK_BOX (box), child);
    }
}

GtkWidget *
stead_make_link (const char *label,
                 const char *name,
                 GCallback   clicked,
                 gpointer    data)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_add_css_class (button, "link");
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  stead_ui_name (button, name);
  g_signal_connect_swapped (button, "clicked", clicked, data);
  return button;
}

static GQuark
id_quark (void)
{
  return g_quark_from_static_string ("stead-make-id");
}

GtkWidget *
stead_make_row (gint64      id,
                const char *title,
                const char *detail)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gint64 *key = g_new (gint64, 1);

  *key = id;
  g_object_set_qdata_full (G_OBJECT (row), id_quark (), key, g_free);
  gtk_box_append (GTK_BOX (box), stead_make_label (title, "strong"));
  gtk_box_append (GTK_BOX (box), stead_make_label (detail, "soft"));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  stead_ui_name (row, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, detail, -1);
  return row;
}

gint64
stead_make_row_id (GtkWidget *row)
{
  const gint64 *key = g_object_get_qdata (G_OBJECT (row), id_quark ());

  return key != NULL ? *key : 0;
}

gboolean
stead_make_peek (const char      *text,
                 const SteadUnit *unit,
                 double          *out_base)
{
  return unit != NULL && text != NULL && *text != '\0'
         && stead_quantity_parse (text, unit->dimension, unit, out_base, NULL, NULL);
}

char *
stead_make_clock (gint64 at)
{
  g_autoptr(GDateTime) time = g_date_time_new_from_unix_local (at);

  return time != NULL ? g_date_time_format (time, "%H:%M") : g_strdup ("?");
}

/* Hours and minutes, and which half of the day was named. */
static gboolean
parse_clock (const char *text,
             int        *out_hour,
             int        *out_minute)
{
  g_autoptr(GRegex) regex = g_regex_new ("^\\s*(\\d{1,2})(?:[:.h](\\d{2}))?\\s*(?:(a|p)\\.?\\s?m\\.?)?\\s*$",
                                         G_REGEX_CASELESS, 0, NULL);
  g_autoptr(GMatchInfo) match = NULL;
  g_autofree char *hour = NULL, *minute = NULL, *half = NULL;

  if (!g_regex_match (regex, text, 0, &match))
    return FALSE;
  hour = g_match_info_fetch (match, 1);
  minute = g_match_info_fetch (match, 2);
  half = g_match_info_fetch (match, 3);
  *out_hour = atoi (hour);
  *out_minute = minute != NULL && *minute != '\0' ? atoi (minute) : 0;
  if (half == NULL || *half == '\0')
    return *out_hour <= 23 && *out_minute <= 59;
  if (*out_hour < 1 || *out_hour > 12 || *out_minute > 59)
    return FALSE;
  *out_hour = *out_hour % 12 + (g_ascii_tolower (*half) == 'p' ? 12 : 0);
  return TRUE;
}

gboolean
stead_make_read_clock (const char *text,
                       SteadDay    day,
                       gint64     *out_at,
                       GError    **error)
{
  g_autoptr(GDateTime) time = NULL;
  int hour, minute, year, month, day_of_month;

  if (!parse_clock (text, &hour, &minute))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE, _("Enter a time of the day, such as 14:05 or 2:05 pm."));
      return FALSE;
    }
  stead_day_split (day, &year, &month, &day_of_month);
  time = g_date_time_new_local (year, month, day_of_month, hour, minute, 0);
  *out_at = g_date_time_to_unix (time);
  return TRUE;
}
