/* stead-sale-rows.c - rows of the plan of a sale day: a product, a cost, a shift. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/sell/stead-sale-rows.h"

#include "answer/stead-sale-answer.h"
#include "app/keep/stead-cash-picks.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-lot-choice.h"
#include "app/stead-ui.h"

#define ROW_KEY "stead-sale-row"

/* What a row is made of; fields that it does not have are NULL. */
typedef struct
{
  gint64      id;
  SteadPick  *pick;
  SteadField *fields[8];
  GtkWidget  *check;
  SteadLotChoice *lots;      /* of a good, not owned */
  SteadDay    day;
  double      brought;
  double      cost_cents;
  gint64      paid_cents;
  char        key;
} Row;

static void
row_free (Row *row)
{
  g_free (row);
}

static Row *
row_of (GtkWidget *widget)
{
  return g_object_get_data (G_OBJECT (widget), ROW_KEY);
}

static void share_lots (GtkWidget *list, GtkWidget *changed);

static void
remove_cb (GtkWidget *row)
{
  GtkWidget *list = gtk_widget_get_parent (row);

  gtk_box_remove (GTK_BOX (list), row);
  share_lots (list, NULL);
}

static Row *
row_new (GtkWidget *box)
{
  Row *row = g_new0 (Row, 1);

  g_object_set_data_full (G_OBJECT (box), ROW_KEY, row, (GDestroyNotify) row_free);
  return row;
}

static GtkWidget *
remove_button (GtkWidget *box)
{
  GtkWidget *button = stead_ui_icon_button ("stead-remove-symbolic", _("Take this line off"));

  gtk_widget_set_valign (button, GTK_ALIGN_START);
  gtk_widget_set_margin_top (button, 20);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (remove_cb), box);
  return button;
}

static SteadField *
narrow (GtkWidget      *box,
        const char     *label,
        SteadFieldKind  kind)
{
  SteadField *field = stead_sell_field (box, label, kind);

  gtk_widget_set_size_request (GTK_WIDGET (field), 70, -1);
  return field;
}

void
stead_sale_row_complain (GtkWidget  *row,
                         const char *message)
{
  Row *self = row_of (row);

  g_return_if_fail (self != NULL);
  if (self->pick != NULL)
    stead_pick_say (self->pick, message, TRUE);
  else
    stead_field_set_error (self->fields[0], message);
  gtk_widget_grab_focus (GTK_WIDGET (self->fields[0]));
}

gboolean
stead_sale_read_clock (SteadField *field,
                       int        *out_minute)
{
  if (stead_sale_clock_parse (stead_field_get_text (field), out_minute))
    {
      stead_field_set_error (field, NULL);
      return TRUE;
    }
  stead_field_set_error (field, _("Enter a time as on a clock: 9:30, 13:00 or 1 pm."));
  gtk_widget_grab_focus (GTK_WIDGET (field));
  return FALSE;
}

/* --- goods -------------------------------------------------------------------------------- */

enum { PLANNED, PRICE, LOW, LIKELY, HIGH, LEFT, MISSED };

static void
show_real (SteadField *field,
           double      value)
{
  if (!isnan (value))
    stead_field_show_number (field, value);
}

/* --- lots, shared ------------------------------------------------------------------------- */

#define OTHERS_KEY "stead-other-sales"

/* Claims of the rows that chose by hand, over those of other sales. */
static GArray *
begin_claims (GtkWidget *list)
{
  const GArray *others = g_object_get_data (G_OBJECT (list), OTHERS_KEY);
  GArray *claims = g_array_new (FALSE, FALSE, sizeof (SteadSaleLot));

  if (others != NULL)
    g_array_append_vals (claims, others->data, others->len);
  for (GtkWidget *box = gtk_widget_get_first_child (list); box != NULL; box = gtk_widget_get_next_sibling (box))
    {
      Row *row = row_of (box);

      if (row->lots != NULL && stead_lot_choice_is_by_hand (row->lots))
        stead_lot_choice_claim (row->lots, claims, 1);
    }
  return claims;
}

/* @changed: (nullable): the row whose own fields of lots are being typed into, which stay */
static void
share_lots (GtkWidget *list,
            GtkWidget *changed)
{
  g_autoptr(GArray) claims = begin_claims (list);

  for (GtkWidget *box = gtk_widget_get_first_child (list); box != NULL; box = gtk_widget_get_next_sibling (box))
    {
      Row *row = row_of (box);
      double units = 0;

      if (row->lots == NULL)
        continue;
      if (stead_lot_choice_is_by_hand (row->lots))
        stead_lot_choice_claim (row->lots, claims, -1);
      if (box != changed && stead_sell_peek_units (row->fields[PLANNED], &units))
        stead_lot_choice_propose (row->lots, stead_pick_get (row->pick), row->day, units, claims);
      stead_lot_choice_claim (row->lots, claims, 1);
    }
}

/* Another product or number has other lots, and leaves others to the other rows. */
static void
show_lots (GtkWidget *box)
{
  GtkWidget *list = gtk_widget_get_parent (box);

  if (list != NULL)
    share_lots (list, NULL);
}

static void
lots_cb (GtkWidget *box,
         gboolean   typed)
{
  GtkWidget *list = gtk_widget_get_parent (box);

  if (list != NULL)
    share_lots (list, typed ? box : NULL);
}

static void
other_product_cb (GtkWidget *box)
{
  stead_lot_choice_set (row_of (box)->lots, NULL);
  show_lots (box);
}

void
stead_good_rows_share (GtkWidget    *list,
                       SteadDay      day,
                       const GArray *others)
{
  GArray *kept = g_array_new (FALSE, FALSE, sizeof (SteadSaleLot));

  g_return_if_fail (GTK_IS_BOX (list));
  if (others != NULL)
    g_array_append_vals (kept, others->data, others->len);
  g_object_set_data_full (G_OBJECT (list), OTHERS_KEY, kept, (GDestroyNotify) g_array_unref);
  for (GtkWidget *box = gtk_widget_get_first_child (list); box != NULL; box = gtk_widget_get_next_sibling (box))
    row_of (box)->day = day;
  share_lots (list, NULL);
}

GtkWidget *
stead_good_row_new (SteadStore          *store,
                    const char          *currency,
                    const SteadSaleGood *good,
                    SteadDay             day)
{
  static const char * const labels[] = {
    N_("Bring"), N_("Price"), N_("Fewest asked for"), N_("Likeliest"), N_("Most"), N_("Left over, worth"), N_("Missed, costs") };
  GtkWidget *box = stead_ui_row_new (6);
  GtkWidget *fields = gtk_grid_new ();
  Row *row = row_new (box);

  row->pick = stead_sell_pick (NULL, _("Product"));
  gtk_grid_set_column_spacing (GTK_GRID (fields), 6);
  gtk_grid_set_row_spacing (GTK_GRID (fields), 6);
  gtk_grid_set_column_homogeneous (GTK_GRID (fields), TRUE);
  gtk_widget_set_hexpand (fields, TRUE);
  gtk_grid_attach (GTK_GRID (fields), GTK_WIDGET (row->pick), 0, 0, 2, 1);
  for (int i = PLANNED; i <= MISSED; i++)
    {
      gboolean money = i == PRICE || i == LEFT || i == MISSED;

      row->fields[i] = narrow (NULL, _(labels[i]), money ? STEAD_FIELD_MONEY : STEAD_FIELD_NUMBER);
      if (money)
        stead_field_set_currency (row->fields[i], currency);
      gtk_grid_attach (GTK_GRID (fields), GTK_WIDGET (row->fields[i]), i <= PRICE ? 2 + i : i - LOW, i <= PRICE ? 0 : 1, 1, 1);
    }
  row->lots = STEAD_LOT_CHOICE (stead_lot_choice_new (store));
  gtk_grid_attach (GTK_GRID (fields), GTK_WIDGET (row->lots), 0, 2, 5, 1);
  stead_ui_row_append (box, fields);
  stead_ui_row_append (box, remove_button (box));
  stead_cash_picks_products (row->pick, store, good->product_id);
  row->id = good->id;
  row->brought = good->brought;
  row->cost_cents = good->cost_cents;
  row->key = good->key;
  stead_field_show_number (row->fields[PLANNED], good->planned);
  stead_field_show_money (row->fields[PRICE], good->price_cents);
  show_real (row->fields[LOW], good->low);
  show_real (row->fields[LIKELY], good->likely);
  show_real (row->fields[HIGH], good->high);
  if (good->left_cents != 0)
    stead_field_show_money (row->fields[LEFT], good->left_cents);
  if (good->missed_cents != 0)
    stead_field_show_money (row->fields[MISSED], good->missed_cents);
  row->day = day;
  stead_lot_choice_set (row->lots, good->lots);
  g_signal_connect_swapped (row->lots, "changed", G_CALLBACK (lots_cb), box);
  g_signal_connect_swapped (row->pick, "changed", G_CALLBACK (other_product_cb), box);
  g_signal_connect_swapped (row->fields[PLANNED], "changed", G_CALLBACK (show_lots), box);
  return box;
}

SteadSaleGood *
stead_good_row_read (GtkWidget *widget)
{
  Row *row = row_of (widget);
  g_autoptr(SteadSaleGood) good = stead_sale_good_new ();
  gboolean read = stead_sell_read_units (row->fields[PLANNED], 0, &good->planned);

  read &= stead_field_read_money (row->fields[PRICE], 0, &good->price_cents);
  read &= stead_sell_read_units (row->fields[LOW], NAN, &good->low);
  read &= stead_sell_read_units (row->fields[LIKELY], NAN, &good->likely);
  read &= stead_sell_read_units (row->fields[HIGH], NAN, &good->high);
  read &= stead_field_read_money (row->fields[LEFT], 0, &good->left_cents);
  read &= stead_field_read_money (row->fields[MISSED], 0, &good->missed_cents);
  read &= stead_lot_choice_read (row->lots, good->lots);
  if (!read)
    return NULL;
  good->id = row->id;
  good->product_id = stead_pick_get (row->pick);
  good->brought = row->brought;
  good->cost_cents = row->cost_cents;
  good->key = row->key;
  return g_steal_pointer (&good);
}

/* --- costs --------------------------------------------------------------------------------- */

GtkWidget *
stead_cost_row_new (const char          *currency,
                    const SteadSaleCost *cost)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  Row *row = row_new (box);

  row->fields[0] = stead_sell_field (box, _("Cost"), STEAD_FIELD_TEXT);
  row->fields[1] = stead_sell_field (box, _("Amount"), STEAD_FIELD_MONEY);
  row->check = gtk_check_button_new_with_label (_("Paid out of the box"));
  gtk_widget_set_valign (row->check, GTK_ALIGN_START);
  gtk_widget_set_margin_top (row->check, 20);
  gtk_box_append (GTK_BOX (box), row->check);
  gtk_box_append (GTK_BOX (box), remove_button (box));
  g_object_set (row->fields[0], "required", TRUE, NULL);
  stead_field_set_currency (row->fields[1], currency);
  row->paid_cents = -1;
  if (cost == NULL)
    return box;
  row->id = cost->id;
  row->paid_cents = cost->paid_cents;
  stead_field_set_text (row->fields[0], cost->name);
  stead_field_show_money (row->fields[1], cost->cents);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (row->check), cost->from_till);
  return box;
}

SteadSaleCost *
stead_cost_row_read (GtkWidget *widget)
{
  Row *row = row_of (widget);
  const char *name = NULL;
  gint64 cents = 0;
  gboolean read = stead_field_read_text (row->fields[0], &name);
  SteadSaleCost *cost;

  read &= stead_field_read_money (row->fields[1], 0, &cents);
  if (!read)
    return NULL;
  cost = g_new0 (SteadSaleCost, 1);
  cost->id = row->id;
  cost->name = g_strdup (name);
  cost->cents = cents;
  cost->paid_cents = row->paid_cents;
  cost->from_till = gtk_check_button_get_active (GTK_CHECK_BUTTON (row->check));
  return cost;
}

/* --- shifts --------------------------------------------------------------------------------- */

GtkWidget *
stead_shift_row_new (SteadStore           *store,
                     const SteadSaleShift *shift)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  Row *row = row_new (box);
  g_autofree char *from = shift != NULL ? stead_sale_clock (shift->from_min) : NULL;
  g_autofree char *to = shift != NULL ? stead_sale_clock (shift->to_min) : NULL;

  row->pick = stead_sell_pick (box, _("Helper"));
  row->fields[0] = narrow (box, _("From"), STEAD_FIELD_TEXT);
  row->fields[1] = narrow (box, _("To"), STEAD_FIELD_TEXT);
  row->fields[2] = narrow (box, _("Break, minutes"), STEAD_FIELD_COUNT);
  row->fields[3] = stead_sell_field (box, _("Duty"), STEAD_FIELD_TEXT);
  gtk_box_append (GTK_BOX (box), remove_button (box));
  stead_cash_picks_people (row->pick, store, shift != NULL ? shift->person_id : 0);
  if (shift == NULL)
    return box;
  row->id = shift->id;
  stead_field_set_text (row->fields[0], from);
  stead_field_set_text (row->fields[1], to);
  stead_field_show_count (row->fields[2], shift->break_min);
  stead_field_set_text (row->fields[3], shift->duty != NULL ? shift->duty : "");
  return box;
}

SteadSaleShift *
stead_shift_row_read (GtkWidget *widget)
{
  Row *row = row_of (widget);
  int from = 0, to = 0;
  gint64 pause = 0;
  gboolean read = stead_sale_read_clock (row->fields[0], &from) & stead_sale_read_clock (row->fields[1], &to);
  SteadSaleShift *shift;

  read &= stead_field_read_count (row->fields[2], 0, &pause);
  if (!read)
    return NULL;
  shift = g_new0 (SteadSaleShift, 1);
  shift->id = row->id;
  shift->person_id = stead_pick_get (row->pick);
  shift->from_min = from;
  shift->to_min = to;
  shift->break_min = (int) MIN (pause, 10000);
  shift->duty = g_strdup (stead_field_get_text (row->fields[3]));
  return shift;
}
