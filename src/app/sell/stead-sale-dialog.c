/* stead-sale-dialog.c - the whole plan of a sale day. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "app/sell/stead-sale-dialog.h"

#include "answer/stead-sale-answer.h"
#include "answer/stead-sale-lots.h"
#include "app/keep/stead-cash-picks.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-sale-rows.h"
#include "app/stead-ui.h"

struct _SteadSaleDialog
{
  SteadDialog  parent_instance;

  SteadStore  *store;       /* not owned */
  SteadSale   *sale;        /* as it was read */
  SteadDay     lots_day;    /* the day as typed */
  GPtrArray   *faces;
  SteadField  *name, *day, *location, *opens, *closes, *weather, *note;
  SteadPick   *account;
  GtkWidget   *goods, *costs, *shifts, *face_grid;
  GtkTextView *bring;
};

G_DEFINE_FINAL_TYPE (SteadSaleDialog, stead_sale_dialog, STEAD_TYPE_DIALOG)

/* --- rows ------------------------------------------------------------------------------- */

/* Of which day lots are proposed; after the cash-up they are what they were. */
static SteadDay
lots_day (SteadSaleDialog *self)
{
  return self->sale->count_id == 0 ? self->lots_day : STEAD_DAY_NONE;
}

/* What sales before this one take is not there for it. */
static void
share_lots (SteadSaleDialog *self)
{
  SteadDay day = lots_day (self);
  g_autoptr(GArray) others = day != STEAD_DAY_NONE ? stead_sale_lots_others (self->store, self->sale->id, day, NULL) : NULL;

  stead_good_rows_share (self->goods, day, others);
}

static void
add_good_cb (SteadSaleDialog *self)
{
  g_autoptr(SteadSaleGood) good = stead_sale_good_new ();
  const char *currency = stead_desk_get_farm (stead_dialog_get_desk (STEAD_DIALOG (self)))->currency;

  gtk_box_append (GTK_BOX (self->goods), stead_good_row_new (self->store, currency, good, lots_day (self)));
  share_lots (self);
}

static void
add_cost_cb (SteadSaleDialog *self)
{
  const char *currency = stead_desk_get_farm (stead_dialog_get_desk (STEAD_DIALOG (self)))->currency;

  gtk_box_append (GTK_BOX (self->costs), stead_cost_row_new (currency, NULL));
}

static void
add_shift_cb (SteadSaleDialog *self)
{
  gtk_box_append (GTK_BOX (self->shifts), stead_shift_row_new (self->store, NULL));
}

static GtkWidget *
nth_row (GtkWidget *box,
         guint      n)
{
  GtkWidget *row = gtk_widget_get_first_child (box);

  while (row != NULL && n-- > 0)
    row = gtk_widget_get_next_sibling (row);
  return row;
}

typedef gpointer (*ReadRow) (GtkWidget *row);

static gboolean
read_rows (GtkWidget *box,
           ReadRow    read,
           GPtrArray *rows)
{
  gboolean good = TRUE;

  for (GtkWidget *row = gtk_widget_get_first_child (box); row != NULL; row = gtk_widget_get_next_sibling (row))
    {
      gpointer fact = read (row);

      if (fact != NULL)
        g_ptr_array_add (rows, fact);
      else
        good = FALSE;
    }
  return good;
}

/* --- reading ------------------------------------------------------------------------------ */

static const SteadSaleBring *
find_bring (const SteadSale *sale,
            const char      *text)
{
  for (guint i = 0; i < sale->bring->len; i++)
    if (strcmp (((const SteadSaleBring *) sale->bring->pdata[i])->text, text) == 0)
      return sale->bring->pdata[i];
  return NULL;
}

/* One thing a line; what was packed stays packed. */
static void
read_bring (SteadSaleDialog *self,
            SteadSale       *sale)
{
  g_autofree char *text = stead_ui_read_lines (self->bring);
  g_auto(GStrv) lines = g_strsplit (text, "\n", -1);

  for (int i = 0; lines[i] != NULL; i++)
    {
      const SteadSaleBring *before;
      SteadSaleBring *bring;

      if (*g_strstrip (lines[i]) == '\0')
        continue;
      before = find_bring (self->sale, lines[i]);
      bring = g_new0 (SteadSaleBring, 1);
      bring->text = g_strdup (lines[i]);
      bring->packed = before != NULL && before->packed;
      g_ptr_array_add (sale->bring, bring);
    }
}

/* What one costs now, for comparing later; what cannot be told is left out. */
static void
note_costs (SteadSaleDialog *self,
            SteadSale       *sale)
{
  for (guint i = 0; i < sale->goods->len; i++)
    {
      SteadSaleGood *good = sale->goods->pdata[i];
      double cents = NAN;

      if (stead_sale_unit_cost (self->store, good->product_id, &cents, NULL) && cents >= 0)
        good->cost_cents = cents;
    }
}

static SteadSale *
read_sale (SteadSaleDialog *self)
{
  const char *currency = stead_desk_get_farm (stead_dialog_get_desk (STEAD_DIALOG (self)))->currency;
  g_autoptr(SteadSale) sale = stead_sale_new ();
  const char *name = NULL;
  gboolean good = stead_field_read_text (self->name, &name);

  good &= stead_field_read_day (self->day, STEAD_DAY_NONE, &sale->day);
  good &= stead_sale_read_clock (self->opens, &sale->opens_min);
  good &= stead_sale_read_clock (self->closes, &sale->closes_min);
  good &= read_rows (self->goods, (ReadRow) stead_good_row_read, sale->goods);
  good &= read_rows (self->costs, (ReadRow) stead_cost_row_read, sale->costs);
  good &= read_rows (self->shifts, (ReadRow) stead_shift_row_read, sale->shifts);
  if (!good)
    return NULL;
  sale->id = self->sale->id;
  sale->count_id = self->sale->count_id;
  sale->opened_at = self->sale->opened_at;
  sale->closed_at = self->sale->closed_at;
  sale->change_next = g_strdup (self->sale->change_next);
  sale->name = g_strdup (name);
  sale->location = g_strdup (stead_field_get_text (self->location));
  sale->weather = g_strdup (stead_field_get_text (self->weather));
  sale->note = g_strdup (stead_field_get_text (self->note));
  sale->account_id = stead_pick_get (self->account);
  g_array_unref (sale->float_pieces);
  sale->float_pieces = stead_sell_read_faces (self->faces, currency);
  read_bring (self, sale);
  note_costs (self, sale);
  return g_steal_pointer (&sale);
}

/* --- saving --------------------------------------------------------------------------------- */

typedef struct
{
  SteadSale      *sale;
  SteadSaleFault  fault;
} Saving;

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  Saving *saving = data;

  return stead_sale_repo_save (store, saving->sale, &saving->fault, error);
}

/* Says it at the field it belongs to; FALSE: there is none. */
static gboolean
point_out (SteadSaleDialog      *self,
           const SteadSaleFault *fault,
           const char           *message)
{
  GtkWidget *row = NULL;

  switch (fault->part)
    {
    case STEAD_SALE_PART_NAME: stead_field_set_error (self->name, message); return TRUE;
    case STEAD_SALE_PART_DAY: stead_field_set_error (self->day, message); return TRUE;
    case STEAD_SALE_PART_HOURS: stead_field_set_error (self->closes, message); return TRUE;
    case STEAD_SALE_PART_ACCOUNT: stead_pick_say (self->account, message, TRUE); return TRUE;
    case STEAD_SALE_PART_GOODS: row = nth_row (self->goods, fault->row); break;
    case STEAD_SALE_PART_COSTS: row = nth_row (self->costs, fault->row); break;
    case STEAD_SALE_PART_SHIFTS: row = nth_row (self->shifts, fault->row); break;
    case STEAD_SALE_PART_NONE:
    case STEAD_SALE_PART_FLOAT:
    case STEAD_SALE_PART_BRING:
    default: break;
    }
  if (row != NULL)
    stead_sale_row_complain (row, message);
  return row != NULL;
}

static gboolean
stead_sale_dialog_save (SteadDialog  *dialog,
                        GError      **error)
{
  SteadSaleDialog *self = STEAD_SALE_DIALOG (dialog);
  g_autoptr(GError) problem = NULL;
  g_autoptr(SteadSale) sale = read_sale (self);
  Saving saving = { .sale = sale };
  g_autofree char *step = NULL;

  if (sale == NULL)
    return FALSE;
  /* Translators: name of a step to undo; a sale. */
  step = g_strdup_printf (_("plan of “%s”"), sale->name);
  if (stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, &saving, &problem))
    {
      stead_desk_jump (stead_dialog_get_desk (dialog), STEAD_TARGET_SALE, sale->id);
      return TRUE;
    }
  if (!point_out (self, &saving.fault, problem->message))
    g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_sale_repo_delete (store, ((SteadSale *) data)->id, error);
}

static gboolean
stead_sale_dialog_remove (SteadDialog  *dialog,
                          GError      **error)
{
  return stead_desk_act (stead_dialog_get_desk (dialog), _("deleting a sale day"), remove_act,
                         STEAD_SALE_DIALOG (dialog)->sale, error);
}

/* --- the dialog -------------------------------------------------------------------------------- */

static void
stead_sale_dialog_dispose (GObject *object)
{
  SteadSaleDialog *self = STEAD_SALE_DIALOG (object);

  g_clear_pointer (&self->sale, stead_sale_free);
  g_clear_pointer (&self->faces, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_sale_dialog_parent_class)->dispose (object);
}

static void
stead_sale_dialog_class_init (SteadSaleDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_sale_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_sale_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_sale_dialog_remove;
}

static void
day_cb (SteadSaleDialog *self)
{
  SteadDay day;

  if (!stead_day_parse (stead_field_get_text (self->day), stead_store_get_today (self->store),
                        stead_date_order_from_locale (), &day, NULL))
    return;
  self->lots_day = day;
  share_lots (self);
}

static GtkWidget *
add_list (GtkWidget  *box,
          const char *heading,
          const char *add,
          GCallback   clicked,
          gpointer    data)
{
  GtkWidget *card = stead_sell_card (box, heading);
  GtkWidget *rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_box_append (GTK_BOX (card), rows);
  stead_sell_button (stead_sell_row (card), add, clicked, data);
  return rows;
}

static void
add_head (SteadSaleDialog *self,
          GtkWidget       *box)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  self->name = stead_sell_field (NULL, _("Name of the sale"), STEAD_FIELD_TEXT);
  self->location = stead_sell_field (NULL, _("Where"), STEAD_FIELD_TEXT);
  self->day = stead_sell_field (NULL, _("Day"), STEAD_FIELD_DAY);
  self->opens = stead_sell_field (NULL, _("Opens"), STEAD_FIELD_TEXT);
  self->closes = stead_sell_field (NULL, _("Closes"), STEAD_FIELD_TEXT);
  self->weather = stead_sell_field (NULL, _("Weather"), STEAD_FIELD_TEXT);
  g_object_set (self->name, "required", TRUE, NULL);
  g_object_set (self->day, "required", TRUE, NULL);
  gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (self->name), 0, 0, 2, 1);
  gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (self->location), 2, 0, 2, 1);
  gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (self->day), 0, 1, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (self->opens), 1, 1, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (self->closes), 2, 1, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (self->weather), 3, 1, 1, 1);
  gtk_box_append (GTK_BOX (box), grid);
}

static void
add_money (SteadSaleDialog *self,
           GtkWidget       *box)
{
  GtkWidget *card = stead_sell_card (box, _("Money for change: how many of each coin and note"));

  self->account = stead_sell_pick (card, _("Box that the money goes into"));
  self->face_grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->face_grid), 18);
  gtk_grid_set_row_spacing (GTK_GRID (self->face_grid), 6);
  gtk_grid_set_column_homogeneous (GTK_GRID (self->face_grid), TRUE);
  gtk_box_append (GTK_BOX (card), self->face_grid);
}

static void
add_bring (SteadSaleDialog *self,
           GtkWidget       *box)
{
  GtkWidget *card = stead_sell_card (box, _("What to bring, one thing a line"));

  self->bring = GTK_TEXT_VIEW (gtk_text_view_new ());
  gtk_text_view_set_accepts_tab (self->bring, FALSE);
  gtk_widget_set_size_request (GTK_WIDGET (self->bring), -1, 72);
  stead_ui_name (GTK_WIDGET (self->bring), _("What to bring"));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->bring));
  self->note = stead_sell_field (card, _("Note"), STEAD_FIELD_TEXT);
}

static void
stead_sale_dialog_init (SteadSaleDialog *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  add_head (self, box);
  self->goods = add_list (box, _("What is sold, and how many people may ask for"), _("Add product"), G_CALLBACK (add_good_cb), self);
  self->costs = add_list (box, _("What the day costs"), _("Add cost"), G_CALLBACK (add_cost_cb), self);
  self->shifts = add_list (box, _("Who helps, and when"), _("Add shift"), G_CALLBACK (add_shift_cb), self);
  add_money (self, box);
  add_bring (self, box);
  g_object_set (self, "content", box, "save-label", _("Save plan"), "default-width", 900, "default-height", 560, NULL);
}

/* --- showing ------------------------------------------------------------------------------------- */

/* A new sale begins with all that is sold now, at its present price. */
static SteadSale *
fresh (SteadStore  *store,
       GError     **error)
{
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, FALSE, error);
  g_autoptr(SteadSale) sale = stead_sale_new ();

  if (products == NULL)
    return NULL;
  sale->day = stead_store_get_today (store) + 7;
  sale->opens_min = 9 * 60;
  sale->closes_min = 13 * 60;
  for (guint i = 0; i < products->len; i++)
    {
      const SteadProduct *product = products->pdata[i];
      SteadSaleGood *good = stead_sale_good_new ();
      g_autoptr(GError) unread = NULL;
      gint64 cents = stead_product_repo_price_on (store, product->id, sale->day, &unread);

      good->product_id = product->id;
      good->planned = (double) product->planned_units;
      good->price_cents = MAX (0, cents);   /* none yet: it is asked for */
      g_ptr_array_add (sale->goods, good);
      if (unread != NULL)
        {
          g_propagate_error (error, g_steal_pointer (&unread));
          return NULL;
        }
    }
  return g_steal_pointer (&sale);
}

static gint64
first_box (SteadStore *store)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, FALSE, NULL);

  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    if (((SteadAccount *) accounts->pdata[i])->kind == STEAD_ACCOUNT_TILL)
      return ((SteadAccount *) accounts->pdata[i])->id;
  return 0;
}

static void
show_bring (SteadSaleDialog *self)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < self->sale->bring->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", ((SteadSaleBring *) self->sale->bring->pdata[i])->text);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->bring), text->str, -1);
  g_string_free (text, TRUE);
}

static void
show_sale (SteadSaleDialog *self,
           SteadDesk       *desk)
{
  SteadStore *store = stead_desk_get_store (desk);
  const char *currency = stead_desk_get_farm (desk)->currency;
  const SteadSale *sale = self->sale;
  g_autofree char *opens = stead_sale_clock (sale->opens_min);
  g_autofree char *closes = stead_sale_clock (sale->closes_min);

  self->store = store;
  self->faces = stead_sell_faces (self->face_grid, currency, NULL, NULL);
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_set_text (self->name, sale->name);
  stead_field_set_text (self->location, sale->location);
  stead_field_set_text (self->weather, sale->weather);
  stead_field_set_text (self->note, sale->note);
  stead_field_show_day (self->day, sale->day);
  stead_field_set_text (self->opens, opens);
  stead_field_set_text (self->closes, closes);
  stead_cash_picks_accounts (self->account, store, sale->account_id != 0 ? sale->account_id : first_box (store));
  stead_sell_show_faces (self->faces, currency, sale->float_pieces);
  self->lots_day = sale->day;
  for (guint i = 0; i < sale->goods->len; i++)
    gtk_box_append (GTK_BOX (self->goods), stead_good_row_new (store, currency, sale->goods->pdata[i], lots_day (self)));
  for (guint i = 0; i < sale->costs->len; i++)
    gtk_box_append (GTK_BOX (self->costs), stead_cost_row_new (currency, sale->costs->pdata[i]));
  for (guint i = 0; i < sale->shifts->len; i++)
    gtk_box_append (GTK_BOX (self->shifts), stead_shift_row_new (store, sale->shifts->pdata[i]));
  share_lots (self);
  show_bring (self);
  g_signal_connect_swapped (self->day, "changed", G_CALLBACK (day_cb), self);
}

void
stead_sale_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     sale_id)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_desk_get_store (desk);
  SteadSale *sale = sale_id != 0 ? stead_sale_repo_get (store, sale_id, &error) : fresh (store, &error);
  SteadSaleDialog *self;

  if (sale == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_SALE_DIALOG, "title", sale_id != 0 ? _("Plan of the sale") : _("New sale"),
                       "delete-label", sale_id != 0 && sale->count_id == 0 ? _("Delete sale") : NULL, NULL);
  self->sale = sale;
  show_sale (self, desk);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}
