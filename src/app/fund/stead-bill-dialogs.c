/* stead-bill-dialogs.c - a line of the bill, its quotes, and lengths in which boards are sold. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-build-buy-why.h"
#include "app/fund/stead-fund-dialogs.h"
#include "app/fund/stead-fund-rows.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "store/stead-store-watch.h"

static void
take_text (char       **to,
           const char  *text)
{
  g_free (*to);
  *to = text != NULL && *text != '\0' ? g_strstrip (g_strdup (text)) : NULL;
}

/* --- a line ----------------------------------------------------------------------------- */

typedef struct
{
  SteadBuildLine *line;
  SteadField     *name, *quantity, *unit, *price, *pack, *supplier, *giver;
  GtkDropDown    *part;
  GtkCheckButton *given, *taxed, *out;
} Line;

static void
line_free (gpointer data)
{
  stead_build_line_free (((Line *) data)->line);
  g_free (data);
}

static gboolean
line_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadBuildLine *line = ((Line *) data)->line;

  stead_store_watch_id (store, &line->id);
  return stead_build_line_repo_save (store, line, error);
}

static gboolean
line_remove_act (SteadStore  *store,
                 gpointer     data,
                 GError     **error)
{
  return stead_build_line_repo_delete (store, ((Line *) data)->line->id, error);
}

static gboolean
read_line (Line *form)
{
  SteadBuildLine *line = form->line;
  const char *name = NULL;
  gboolean own = line->key == NULL;
  gboolean good = own ? stead_field_read_text (form->name, &name) : TRUE;

  good &= stead_field_read_number (form->quantity, own ? 1 : NAN, &line->quantity);
  good &= stead_field_read_money (form->price, -1, &line->price_cents);
  good &= stead_field_read_number (form->pack, 1, &line->pack);
  if (!good)
    return FALSE;
  if (own)
    {
      take_text (&line->name, name);
      take_text (&line->unit, stead_field_get_text (form->unit));
      line->part = (SteadBuildPart) stead_fund_get_part (form->part, FALSE);
    }
  take_text (&line->supplier, stead_field_get_text (form->supplier));
  take_text (&line->giver, stead_field_get_text (form->giver));
  line->given = gtk_check_button_get_active (form->given);
  line->taxed = gtk_check_button_get_active (form->taxed);
  line->left_out = gtk_check_button_get_active (form->out);
  if (!line->given || line->price_cents >= 0)
    return TRUE;
  stead_field_set_error (form->price, _("Something given has a fair value: what it would cost to buy."));
  return FALSE;
}

static gboolean
line_save (SteadForm  *dialog,
           gpointer    data,
           GError    **error)
{
  Line *form = data;

  if (!read_line (form))
    return FALSE;
  return stead_form_act (dialog, _("line of the bill"), line_act, form, error);
}

static gboolean
line_remove (SteadForm  *dialog,
             gpointer    data,
             GError    **error)
{
  return stead_form_act (dialog, _("a line off the bill"), line_remove_act, data, error);
}

static void
show_line (Line                *form,
           const SteadBuildRow *row)
{
  const SteadBuildLine *line = form->line;

  if (line->name != NULL && line->key == NULL)
    stead_field_set_text (form->name, line->name);
  if (!isnan (line->quantity))
    stead_field_show_number (form->quantity, line->quantity);
  if (line->key != NULL)
    {
      g_autofree char *drawn = stead_number_format (row->drawn, 2);
      /* Translators: grey in an empty field: the amount that the drawing says. */
      g_autofree char *hint = g_strdup_printf (_("%s by the drawing"), drawn);

      g_object_set (form->quantity, "hint", hint, NULL);
    }
  if (line->unit != NULL)
    stead_field_set_text (form->unit, line->unit);
  if (line->price_cents >= 0)
    stead_field_show_money (form->price, line->price_cents);
  stead_field_show_number (form->pack, line->pack);
  if (line->supplier != NULL)
    stead_field_set_text (form->supplier, line->supplier);
  if (line->giver != NULL)
    stead_field_set_text (form->giver, line->giver);
}

void
stead_line_dialog_show (GtkWidget           *parent,
                        SteadDesk           *desk,
                        gint64               build_id,
                        const SteadBuildRow *row)
{
  g_autoptr(GError) error = NULL;
  SteadBuildLine *line = stead_fund_find_line (desk, build_id, row, &error);
  SteadForm *dialog;
  gboolean own;
  Line *form;

  if (line == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  form = g_new0 (Line, 1);
  form->line = line;
  own = line->key == NULL;
  dialog = stead_form_new (own ? (line->id == 0 ? _("New line") : _("Line of the bill")) : row->name, _("Save line"),
                           own && line->id != 0 ? _("Delete line") : NULL, line_save, line_remove, form, line_free);
  form->name = stead_form_add (dialog, desk, _("What is needed"), STEAD_FIELD_TEXT);
  form->part = stead_fund_add_part (dialog, _("Part of the build"), NULL, (int) line->part);
  gtk_widget_set_visible (GTK_WIDGET (form->name), own);
  gtk_widget_set_visible (gtk_widget_get_parent (GTK_WIDGET (form->part)), own);
  form->quantity = stead_form_add (dialog, desk, _("How many"), STEAD_FIELD_NUMBER);
  form->unit = stead_form_add (dialog, desk, _("Measured in"), STEAD_FIELD_TEXT);
  gtk_widget_set_visible (GTK_WIDGET (form->unit), own);
  g_object_set (form->unit, "hint", _("pieces"), NULL);
  form->price = stead_form_add (dialog, desk, _("Price of one"), STEAD_FIELD_MONEY);
  form->pack = stead_form_add (dialog, desk, _("How many are sold together"), STEAD_FIELD_NUMBER);
  form->supplier = stead_form_add (dialog, desk, _("To be bought from"), STEAD_FIELD_TEXT);
  form->giver = stead_form_add (dialog, desk, _("Given by"), STEAD_FIELD_TEXT);
  form->given = stead_form_add_check (dialog, _("It is given; the price is its fair value"), line->given);
  form->taxed = stead_form_add_check (dialog, _("Sales tax is paid on it"), line->taxed);
  form->out = stead_form_add_check (dialog, _("It is not needed: leave it out"), line->left_out);
  show_line (form, row);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (own ? form->name : form->price));
}

/* --- quotes ----------------------------------------------------------------------------- */

typedef struct
{
  SteadBuildLine  *line;
  SteadBuildQuote  quote;
  gint64           chosen_id;   /* of the quote that is taken, or thrown away */
  GtkBox          *list;
  SteadForm   *dialog;
  SteadField      *supplier, *price, *day;
} Quotes;

static void
quotes_free (gpointer data)
{
  stead_build_line_free (((Quotes *) data)->line);
  g_free (data);
}

/* A thing of the drawing has no line of its own until somebody says something about it. */
static gboolean
quote_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  Quotes *form = data;

  stead_store_watch_id (store, &form->line->id);
  return (form->line->id != 0 || stead_build_line_repo_save (store, form->line, error)) &&
         stead_build_quote_repo_add (store, form->line->id, &form->quote, error);
}

static gboolean
choose_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_build_quote_repo_choose (store, ((Quotes *) data)->chosen_id, error);
}

static gboolean
drop_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_build_quote_repo_delete (store, ((Quotes *) data)->chosen_id, error);
}

static gboolean
quote_save (SteadForm  *dialog,
            gpointer    data,
            GError    **error)
{
  Quotes *form = data;
  SteadDay today = stead_store_get_today (stead_form_get_store (dialog));
  const char *supplier = NULL;
  gboolean good = stead_field_read_text (form->supplier, &supplier);

  good &= stead_field_read_money (form->price, -1, &form->quote.price_cents);
  good &= stead_field_read_day (form->day, today, &form->quote.day);
  if (good && form->quote.price_cents < 0)
    {
      stead_field_set_error (form->price, _("Enter the price that was quoted."));
      good = FALSE;
    }
  if (good && form->quote.day > today)
    {
      stead_field_set_error (form->day, _("A quote was given today or before."));
      good = FALSE;
    }
  if (!good)
    return FALSE;
  form->quote.supplier = (char *) supplier;
  return stead_form_act (dialog, _("quote"), quote_act, form, error);
}

static void
take_cb (Quotes    *form,
         GtkWidget *button)
{
  g_autoptr(GError) error = NULL;

  form->chosen_id = stead_fund_row_id (button);
  if (stead_form_act (form->dialog, _("choice of a quote"), choose_act, form, &error))
    gtk_window_destroy (GTK_WINDOW (form->dialog));
  else
    stead_dialog_show_error (STEAD_DIALOG (form->dialog), error->message);
}

static void
drop_cb (Quotes    *form,
         GtkWidget *button)
{
  g_autoptr(GError) error = NULL;

  form->chosen_id = stead_fund_row_id (button);
  if (stead_form_act (form->dialog, _("a quote less"), drop_act, form, &error))
    gtk_window_destroy (GTK_WINDOW (form->dialog));
  else
    stead_dialog_show_error (STEAD_DIALOG (form->dialog), error->message);
}

/* Lowest first; beside each what all of it comes to there. */
static void
list_quotes (Quotes              *form,
             const SteadBuildRow *row,
             SteadDesk           *desk)
{
  const char *currency = stead_desk_get_farm (desk)->currency;

  for (guint i = 0; i < form->line->quotes->len; i++)
    {
      const SteadBuildQuote *quote = form->line->quotes->pdata[i];
      g_autofree char *price = stead_money_format (quote->price_cents, currency);
      g_autofree char *all = stead_money_format (stead_build_price_cents (quote->price_cents, row->packs), currency);
      g_autofree char *day = stead_day_format (quote->day, STEAD_DAY_STYLE_MEDIUM);
      gboolean chosen = g_strcmp0 (form->line->supplier, quote->supplier) == 0 && form->line->price_cents == quote->price_cents;
      /* Translators: price of one, what all of them cost, day of the quote. */
      g_autofree char *detail = chosen ? g_strdup_printf (_("%s each, %s together; quoted on %s; chosen"), price, all, day)
                                       : g_strdup_printf (_("%s each, %s together; quoted on %s"), price, all, day);
      GtkWidget *line = stead_fund_row (form->list, quote->id, quote->supplier, detail);

      if (!chosen)
        stead_fund_row_action (line, _("Choose"), G_CALLBACK (take_cb), form);
      stead_fund_row_action (line, _("Take away"), G_CALLBACK (drop_cb), form);
    }
  if (form->line->quotes->len == 0)
    stead_fund_row_none (form->list, _("No quote yet. Ask two or three suppliers for the same thing, and enter what each says."));
}

static void
add_quote_whys (Quotes              *form,
                const SteadBuildRow *row,
                SteadDesk           *desk)
{
  g_autoptr(GPtrArray) whys = stead_build_quotes_whys (row, form->line->quotes, stead_desk_get_farm (desk)->currency);
  SteadWhyBox *box;

  stead_form_add_widget (form->dialog, stead_why_box_new_folded (&box));
  stead_why_box_set (box, whys);
}

void
stead_quotes_dialog_show (GtkWidget           *parent,
                          SteadDesk           *desk,
                          gint64               build_id,
                          const SteadBuildRow *row)
{
  g_autoptr(GError) error = NULL;
  SteadBuildLine *line = stead_fund_find_line (desk, build_id, row, &error);
  /* Translators: title of a dialog; a thing on the bill. */
  g_autofree char *title = g_strdup_printf (_("Quotes: %s"), row->name);
  Quotes *form;

  if (line == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  form = g_new0 (Quotes, 1);
  form->line = line;
  form->dialog = stead_form_new (title, _("Add quote"), NULL, quote_save, NULL, form, quotes_free);
  form->list = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 9));
  list_quotes (form, row, desk);
  stead_form_add_widget (form->dialog, GTK_WIDGET (form->list));
  add_quote_whys (form, row, desk);
  form->supplier = stead_form_add (form->dialog, desk, _("Supplier"), STEAD_FIELD_TEXT);
  form->price = stead_form_add (form->dialog, desk, _("Price of one"), STEAD_FIELD_MONEY);
  form->day = stead_form_add (form->dialog, desk, _("Quoted on"), STEAD_FIELD_DAY);
  stead_field_show_day (form->day, stead_store_get_today (stead_desk_get_store (desk)));
  stead_dialog_present (STEAD_DIALOG (form->dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->supplier));
}

/* --- lengths in which boards are sold ------------------------------------------------------ */

#define NEW_STOCKS 2

typedef struct
{
  SteadField *size, *length, *price;
} Stock;

typedef struct
{
  SteadBuild *build;
  GArray     *rows;   /* of Stock */
} Stocks;

static void
stocks_free (gpointer data)
{
  stead_build_free (((Stocks *) data)->build);
  g_array_unref (((Stocks *) data)->rows);
  g_free (data);
}

static gboolean
read_stock (Stocks      *form,
            const Stock *row)
{
  g_autofree char *size = g_strstrip (g_strdup (stead_field_get_text (row->size)));
  SteadBuildStock stock = { .length_m = 0 };

  if (*size == '\0')
    return TRUE;
  if (!stead_field_read_quantity (row->length, 0, &stock.length_m) || !stead_field_read_money (row->price, 0, &stock.price_cents))
    return FALSE;
  if (!(stock.length_m > 0))
    {
      stead_field_set_error (row->length, _("Enter the length in which it is sold."));
      return FALSE;
    }
  g_strlcpy (stock.size, size, sizeof stock.size);
  g_array_append_val (form->build->stocks, stock);
  return TRUE;
}

static gboolean
stocks_save (SteadForm  *dialog,
             gpointer    data,
             GError    **error)
{
  Stocks *form = data;
  gboolean good = TRUE;

  g_array_set_size (form->build->stocks, 0);
  for (guint i = 0; i < form->rows->len; i++)
    good &= read_stock (form, &g_array_index (form->rows, Stock, i));
  return good && stead_fund_save_build (dialog, form->build, _("boards sold"), error);
}

static void
add_stock (Stocks                *form,
           SteadForm             *dialog,
           SteadDesk             *desk,
           guint                  number,
           const SteadBuildStock *stock)
{
  g_autofree char *size = g_strdup_printf (_("Size %u"), number);
  g_autofree char *length = g_strdup_printf (_("Length %u"), number);
  g_autofree char *price = g_strdup_printf (_("Price of one %u"), number);
  Stock row;

  row.size = stead_form_add (dialog, desk, size, STEAD_FIELD_TEXT);
  /* Kept for the cut of the shelter's wood: these two sizes are cut. */
  g_object_set (row.size, "hint", _("2x4 or 2x6"), NULL);
  row.length = stead_form_add (dialog, desk, length, STEAD_FIELD_QUANTITY);
  row.price = stead_form_add (dialog, desk, price, STEAD_FIELD_MONEY);
  stead_form_skip (dialog);
  if (stock != NULL)
    {
      stead_field_set_text (row.size, stock->size);
      stead_field_show_quantity (row.length, stock->length_m);
      stead_field_show_money (row.price, stock->price_cents);
    }
  g_array_append_val (form->rows, row);
}

void
stead_stocks_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     build_id)
{
  g_autoptr(SteadBuild) build = stead_build_repo_get (stead_desk_get_store (desk), build_id, NULL);
  SteadForm *dialog;
  Stocks *form;
  guint n;

  if (build == NULL)
    return;
  form = g_new0 (Stocks, 1);
  form->build = g_steal_pointer (&build);
  form->rows = g_array_new (FALSE, FALSE, sizeof (Stock));
  n = form->build->stocks->len;
  dialog = stead_form_new (_("Boards sold"), _("Save lengths"), NULL, stocks_save, NULL, form, stocks_free);
  stead_form_add_text (dialog, _("In which lengths are the shelter's boards sold, and at what price? With that the pieces are cut so that they cost least; the shopping list shows how."), "soft");
  for (guint i = 0; i < n + NEW_STOCKS; i++)
    add_stock (form, dialog, desk, i + 1, i < n ? &g_array_index (form->build->stocks, SteadBuildStock, i) : NULL);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
}
