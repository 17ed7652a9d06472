/* stead-sell-parts.c - small widgets that the parts of Sell share. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/sell/stead-sell-parts.h"

#include "app/keep/stead-cash-picks.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-columns-layout.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-coins.h"
#include "core/stead-money.h"
#include "core/stead-quantity.h"

/* Of a card with a table of five columns, in pixels. */
#define LEAST_CARD_WIDTH 460

#define FACE_COLUMNS 2
#define LOT_COLUMNS 2

GtkWidget *
stead_sell_card (GtkWidget  *parent,
                 const char *heading)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_widget_add_css_class (card, "card");
  if (heading != NULL)
    gtk_box_append (GTK_BOX (card), stead_make_label (heading, "heading"));
  gtk_box_append (GTK_BOX (parent), card);
  return card;
}

GtkWidget *
stead_sell_columns (GtkWidget *parent)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_widget_set_layout_manager (box, stead_columns_layout_new (2, LEAST_CARD_WIDTH, FALSE));
  gtk_box_append (GTK_BOX (parent), box);
  return box;
}

GtkWidget *
stead_sell_row (GtkWidget *parent)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_widget_set_layout_manager (row, stead_wrap_layout_new ());
  gtk_box_append (GTK_BOX (parent), row);
  return row;
}

GtkWidget *
stead_sell_button (GtkWidget  *row,
                   const char *label,
                   GCallback   clicked,
                   gpointer    data)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  g_signal_connect_swapped (button, "clicked", clicked, data);
  gtk_box_append (GTK_BOX (row), button);
  return button;
}

SteadField *
stead_sell_field (GtkWidget      *parent,
                  const char     *label,
                  SteadFieldKind  kind)
{
  GtkWidget *field = stead_field_new (label, kind);

  gtk_widget_set_hexpand (field, TRUE);
  if (parent != NULL)
    gtk_box_append (GTK_BOX (parent), field);
  return STEAD_FIELD (field);
}

SteadPick *
stead_sell_pick (GtkWidget  *parent,
                 const char *label)
{
  GtkWidget *pick = stead_pick_new (label);

  gtk_widget_set_hexpand (pick, TRUE);
  if (parent != NULL)
    gtk_box_append (GTK_BOX (parent), pick);
  return STEAD_PICK (pick);
}

/* Rather two lines than a table that is wider than the screen. */
static void
give_way (GtkLabel *label)
{
  stead_ui_wrap (label);
  gtk_label_set_justify (label, GTK_JUSTIFY_RIGHT);
  gtk_widget_set_valign (GTK_WIDGET (label), GTK_ALIGN_START);
}

void
stead_sell_figures (GtkWidget  *grid,
                    int         row,
                    const char *style,
                    ...)
{
  va_list texts;
  const char *text;
  int column = 0;

  va_start (texts, style);
  while ((text = va_arg (texts, const char *)) != NULL)
    {
      GtkWidget *label = column == 0 ? stead_make_label (text, style) : stead_make_figure (text, style);

      if (column == 0)
        gtk_widget_set_hexpand (label, TRUE);
      else
        give_way (GTK_LABEL (label));
      gtk_grid_attach (GTK_GRID (grid), label, column++, row, 1, 1);
    }
  va_end (texts);
}

GtkWidget *
stead_sell_lots (const GPtrArray *texts)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 2);
  for (int i = 0; i < (int) texts->len; i++)
    {
      GtkWidget *label = stead_make_label (texts->pdata[i], "soft");

      gtk_widget_set_valign (label, GTK_ALIGN_START);
      gtk_grid_attach (GTK_GRID (grid), label, i % LOT_COLUMNS, i / LOT_COLUMNS, texts->len == 1 ? LOT_COLUMNS : 1, 1);
    }
  return grid;
}

GPtrArray *
stead_sell_faces (GtkWidget  *grid,
                  const char *currency,
                  GCallback   changed,
                  gpointer    data)
{
  GPtrArray *fields = g_ptr_array_new ();
  g_autoptr(GtkSizeGroup) widths = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  gsize n = 0;
  const gint64 *faces = stead_coins_faces (currency, &n);
  int rows = (int) (n + FACE_COLUMNS - 1) / FACE_COLUMNS;

  for (int i = 0; i < (int) n; i++)
    {
      g_autofree char *face = stead_money_format (faces[i], currency);
      /* Translators: beside a field for the number of coins or notes of this amount. */
      g_autofree char *label = g_strdup_printf (_("%s ×"), face);
      SteadField *field = stead_sell_field (NULL, label, STEAD_FIELD_COUNT);

      g_object_set (field, "compact", TRUE, NULL);
      if (changed != NULL)
        g_signal_connect_swapped (field, "changed", changed, data);
      stead_field_share_width (field, widths);
      stead_cash_picks_put_face (GTK_GRID (grid), GTK_WIDGET (field), i / rows);
      g_ptr_array_add (fields, field);
    }
  return fields;
}

GArray *
stead_sell_read_faces (GPtrArray  *fields,
                       const char *currency)
{
  GArray *pieces = g_array_new (FALSE, TRUE, sizeof (SteadCashPiece));
  gsize n = 0;
  const gint64 *faces = stead_coins_faces (currency, &n);

  for (guint i = 0; i < fields->len && i < n; i++)
    {
      gint64 number = g_ascii_strtoll (stead_field_get_text (fields->pdata[i]), NULL, 10);
      SteadCashPiece piece = { .face_cents = faces[i], .pieces = CLAMP (number, 0, STEAD_COINS_MOST_PIECES) };

      if (piece.pieces > 0)
        g_array_append_val (pieces, piece);
    }
  return pieces;
}

void
stead_sell_show_faces (GPtrArray    *fields,
                       const char   *currency,
                       const GArray *pieces)
{
  gsize n = 0;
  const gint64 *faces = stead_coins_faces (currency, &n);

  for (guint i = 0; i < fields->len && i < n; i++)
    {
      stead_field_set_text (fields->pdata[i], "");
      for (guint j = 0; j < pieces->len; j++)
        if (g_array_index (pieces, SteadCashPiece, j).face_cents == faces[i])
          stead_field_show_count (fields->pdata[i], g_array_index (pieces, SteadCashPiece, j).pieces);
    }
}

gint64
stead_sell_now (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

gboolean
stead_sell_read_units (SteadField *field,
                       double      if_empty,
                       double     *out)
{
  if (!stead_field_read_number (field, if_empty, out))
    return FALSE;
  if (stead_field_is_empty (field) || (*out >= 0 && *out <= STEAD_SALE_MOST_UNITS))
    return TRUE;
  stead_field_set_error (field, _("Enter a number of 0 or more."));
  return FALSE;
}

gboolean
stead_sell_peek_units (SteadField *field,
                       double     *out)
{
  return stead_number_parse (stead_field_get_text (field), out, NULL) && *out >= 0 && *out <= STEAD_SALE_MOST_UNITS;
}
