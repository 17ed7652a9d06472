/* stead-fund-rows.c - lists of Fund: a title over a softer line, and what can be done with it. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/fund/stead-fund-rows.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

static GQuark
id_quark (void)
{
  return g_quark_from_static_string ("stead-fund-row-id");
}

static GQuark
title_quark (void)
{
  return g_quark_from_static_string ("stead-fund-row-title");
}

static GQuark
actions_quark (void)
{
  return g_quark_from_static_string ("stead-fund-row-actions");
}

GtkWidget *
stead_fund_row (GtkBox     *box,
                gint64      id,
                const char *title,
                const char *detail)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *actions = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gint64 *key = g_new (gint64, 1);

  *key = id;
  gtk_widget_set_layout_manager (actions, stead_wrap_layout_new ());
  g_object_set_qdata_full (G_OBJECT (row), id_quark (), key, g_free);
  g_object_set_qdata_full (G_OBJECT (row), title_quark (), g_strdup (title), g_free);
  g_object_set_qdata (G_OBJECT (row), actions_quark (), actions);
  gtk_widget_add_css_class (row, "fund-row");
  gtk_widget_add_css_class (actions, "outdent");
  gtk_box_append (GTK_BOX (row), stead_make_label (title, "strong"));
  if (detail != NULL && *detail != '\0')
    gtk_box_append (GTK_BOX (row), stead_make_label (detail, "soft"));
  gtk_box_append (GTK_BOX (row), actions);
  /* Links reach over the edge; no link, and the box would be narrower than nothing. */
  gtk_widget_set_visible (actions, FALSE);
  gtk_box_append (box, row);
  return row;
}

void
stead_fund_row_action (GtkWidget  *row,
                       const char *label,
                       GCallback   clicked,
                       gpointer    data)
{
  GtkWidget *actions = g_object_get_qdata (G_OBJECT (row), actions_quark ());
  /* Translators: a button and the row of a list that it stands on: "Change… Winter market". */
  g_autofree char *name = g_strdup_printf (C_("button of a row", "%s %s"), label,
                                           (const char *) g_object_get_qdata (G_OBJECT (row), title_quark ()));

  gtk_widget_set_visible (actions, TRUE);
  gtk_box_append (GTK_BOX (actions), stead_make_link (label, name, clicked, data));
}

gint64
stead_fund_row_id (GtkWidget *button)
{
  const gint64 *id = NULL;

  for (GtkWidget *widget = button; widget != NULL && id == NULL; widget = gtk_widget_get_parent (widget))
    id = g_object_get_qdata (G_OBJECT (widget), id_quark ());
  return id != NULL ? *id : 0;
}

void
stead_fund_row_none (GtkBox     *box,
                     const char *text)
{
  gtk_box_append (box, stead_make_label (text, "soft"));
}
