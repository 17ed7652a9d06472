/* stead-cash-up-view.c - the box is counted by two, and what is left over is put away.
 *
 * Nothing is saved until it is posted; then all of it is, in one step.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/sell/stead-cash-up-view.h"

#include "answer/stead-cash-count-why.h"
#include "answer/stead-cash-words.h"
#include "answer/stead-sale-answer.h"
#include "app/keep/stead-cash-picks.h"
#include "app/make/stead-make-parts.h"
#include "app/sell/stead-sell-parts.h"
#include "app/stead-why-box.h"
#include "core/stead-hours.h"
#include "core/stead-money.h"
#include "store/stead-sale-cash-up.h"

/* Fields of one product: what is left over, by where it goes, and why. */
typedef struct
{
  gint64      line_id;
  GtkLabel   *problem;
  SteadField *places[STEAD_N_LEFT_PLACES];
  SteadField *reason;
} Left;

struct _SteadCashUpView
{
  GtkBox      parent_instance;

  SteadDesk  *desk;        /* not owned */
  gint64      sale_id;
  SteadSale  *sale;
  GPtrArray  *faces;       /* of SteadField, not owned */
  GPtrArray  *paid;        /* the same, one a cost */
  GPtrArray  *lefts;       /* of Left */
  GPtrArray  *hours;       /* of GtkCheckButton, not owned, one a shift */
  GtkLabel   *sum, *problem, *caution;
  GtkWidget  *face_grid, *costs, *goods, *shifts;
  SteadPick  *first, *second, *float_from, *deposit_to;
  SteadField *reason, *keep, *slip, *change_next;
  SteadWhyBox *whys;
};

G_DEFINE_FINAL_TYPE (SteadCashUpView, stead_cash_up_view, GTK_TYPE_BOX)

static const char *
currency_of (SteadCashUpView *self)
{
  return stead_desk_get_farm (self->desk)->currency;
}

/* --- what is there ------------------------------------------------------------------------ */

/* The costs as they were paid, as far as they can be read. */
static GPtrArray *
read_costs (SteadCashUpView *self,
            gboolean        *good)
{
  GPtrArray *costs = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_sale_cost_free);

  for (guint i = 0; i < self->sale->costs->len; i++)
    {
      const SteadSaleCost *before = self->sale->costs->pdata[i];
      SteadSaleCost *cost = g_memdup2 (before, sizeof *before);
      gint64 cents = before->cents;

      cost->name = g_strdup (before->name);
      if (good != NULL)
        *good &= stead_field_read_money (self->paid->pdata[i], before->cents, &cents);
      else if (!stead_money_parse (stead_field_get_text (self->paid->pdata[i]), currency_of (self), &cents, NULL))
        cents = before->cents;
      cost->paid_cents = cents;
      g_ptr_array_add (costs, cost);
    }
  return costs;
}

static void
show_whys (SteadCashUpView     *self,
           const SteadSaleTill *till,
           const GArray        *pieces)
{
  g_autoptr(GArray) sums = stead_sale_repo_sums (stead_desk_get_store (self->desk), self->sale_id, NULL);
  g_autoptr(GPtrArray) whys = NULL;

  if (sums == NULL)
    return;
  whys = stead_cash_up_whys (self->sale, sums, till, pieces, currency_of (self));
  stead_why_box_set (self->whys, whys);
}

static void
update_sum (SteadCashUpView *self)
{
  g_autoptr(GArray) pieces = NULL;
  g_autoptr(GPtrArray) costs = NULL;
  g_autofree char *float_text = NULL, *taken = NULL, *out = NULL, *expected = NULL, *counted = NULL, *off = NULL;
  g_autofree char *text = NULL;
  const char *currency;
  SteadSaleTill till;

  if (self->sale == NULL)
    return;
  currency = currency_of (self);
  pieces = stead_sell_read_faces (self->faces, currency);
  costs = read_costs (self, NULL);
  if (!stead_sale_till (stead_desk_get_store (self->desk), self->sale, costs, pieces, &till, NULL))
    return;
  float_text = stead_money_format (till.float_cents, currency);
  taken = stead_money_format (till.takings_cents, currency);
  out = stead_money_format (till.paid_out_cents, currency);
  expected = stead_money_format (till.expected_cents, currency);
  counted = stead_money_format (till.counted_cents, currency);
  off = stead_money_format (ABS (till.over_cents), currency);
  /* Translators: sums of money. */
  text = till.over_cents == 0
         ? g_strdup_printf (_("Float %s + taken %s − paid out %s = <b>%s</b>. Counted <b>%s</b>: it agrees."),
                            float_text, taken, out, expected, counted)
         : till.over_cents > 0
         ? g_strdup_printf (_("Float %s + taken %s − paid out %s = <b>%s</b>. Counted <b>%s</b>: <b>%s over</b>."),
                            float_text, taken, out, expected, counted, off)
         : g_strdup_printf (_("Float %s + taken %s − paid out %s = <b>%s</b>. Counted <b>%s</b>: <b>%s short</b>."),
                            float_text, taken, out, expected, counted, off);
  gtk_label_set_markup (self->sum, text);
  gtk_widget_set_visible (GTK_WIDGET (self->reason), till.over_cents != 0);
  show_whys (self, &till, pieces);
}

/* --- showing ---------------------------------------------------------------------------------- */

static void
show_costs (SteadCashUpView *self)
{
  g_autoptr(GtkSizeGroup) widths = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);

  stead_make_clear (self->costs);
  g_ptr_array_set_size (self->paid, 0);
  for (guint i = 0; i < self->sale->costs->len; i++)
    {
      const SteadSaleCost *cost = self->sale->costs->pdata[i];
      /* Translators: a cost, and that it was paid out of the box. */
      g_autofree char *label = cost->from_till ? g_strdup_printf (_("%s, out of the box"), cost->name) : g_strdup (cost->name);
      SteadField *field = stead_sell_field (self->costs, label, STEAD_FIELD_MONEY);

      g_object_set (field, "compact", TRUE, NULL);
      stead_field_share_width (field, widths);
      stead_field_set_currency (field, currency_of (self));
      stead_field_show_money (field, stead_sale_cost_paid (cost));
      g_signal_connect_swapped (field, "changed", G_CALLBACK (update_sum), self);
      g_ptr_array_add (self->paid, field);
    }
  gtk_widget_set_visible (gtk_widget_get_parent (self->costs), self->paid->len > 0);
}

static void
add_left (SteadCashUpView     *self,
          const SteadSaleGood *good,
          double               open)
{
  static const char * const labels[] = { N_("Store room"), N_("Kitchen"), N_("Donated"), N_("Thrown away or missing") };
  Left *left = g_new0 (Left, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *grid = gtk_grid_new ();
  g_autofree char *there = stead_words_units (good->pack, MAX (0, open));
  /* Translators: a product, and how much of it must be left over. */
  g_autofree char *head = g_strdup_printf (_("%s: %s must be left"), good->name, there);

  left->line_id = good->id;
  gtk_box_append (GTK_BOX (box), stead_make_label (head, "strong"));
  left->problem = GTK_LABEL (stead_make_label (NULL, "warn"));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (left->problem));
  gtk_widget_set_visible (GTK_WIDGET (left->problem), FALSE);
  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  for (int i = 0; i < STEAD_N_LEFT_PLACES; i++)
    {
      /* Translators: for a screen reader: a product, and where what is left of it goes. */
      g_autofree char *name = g_strdup_printf (_("%s: %s"), good->name, _(labels[i]));

      left->places[i] = stead_sell_field (NULL, name, STEAD_FIELD_NUMBER);
      gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (left->places[i]), i % 2, i / 2, 1, 1);
    }
  {
    g_autofree char *name = g_strdup_printf (_("%s: why thrown away or missing"), good->name);

    left->reason = stead_sell_field (NULL, name, STEAD_FIELD_TEXT);
  }
  gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (left->reason), 0, 2, 2, 1);
  gtk_box_append (GTK_BOX (box), grid);
  gtk_box_append (GTK_BOX (self->goods), box);
  if (open > 1e-6)
    stead_field_show_number (left->places[good->item_id != 0 ? STEAD_LEFT_STORE : STEAD_LEFT_KITCHEN], open);
  g_ptr_array_add (self->lefts, left);
}

static void
show_goods (SteadCashUpView *self)
{
  g_autoptr(GArray) sums = stead_sale_repo_sums (stead_desk_get_store (self->desk), self->sale_id, NULL);

  stead_make_clear (self->goods);
  g_ptr_array_set_size (self->lefts, 0);
  for (guint i = 0; sums != NULL && i < self->sale->goods->len; i++)
    {
      const SteadSaleGood *good = self->sale->goods->pdata[i];
      const SteadSaleSum *sum = stead_sale_sums_find (sums, good->id);

      if (sum != NULL)
        add_left (self, good, stead_sale_good_brought (good) - stead_sale_sum_tallied (sum));
    }
}

static void
show_hours (SteadCashUpView *self)
{
  stead_make_clear (self->shifts);
  g_ptr_array_set_size (self->hours, 0);
  for (guint i = 0; i < self->sale->shifts->len; i++)
    {
      const SteadSaleShift *shift = self->sale->shifts->pdata[i];
      g_autofree char *hours = stead_hours_format (shift->to_min - shift->from_min - shift->break_min);
      /* Translators: a helper, and hours of work. */
      g_autofree char *label = g_strdup_printf (_("%s worked %s hours"), shift->person_name, hours);
      GtkWidget *check = gtk_check_button_new_with_label (label);

      gtk_box_append (GTK_BOX (self->shifts), check);
      g_ptr_array_add (self->hours, check);
    }
  gtk_widget_set_visible (gtk_widget_get_parent (self->shifts), self->hours->len > 0);
}

/* --- posting ------------------------------------------------------------------------------------ */

static gboolean
read_lefts (SteadCashUpView *self,
            SteadSaleCashUp *up)
{
  gboolean good = TRUE;

  for (guint i = 0; i < self->lefts->len; i++)
    {
      Left *left = self->lefts->pdata[i];

      stead_make_say (left->problem, NULL, FALSE);
      for (int at = 0; at < STEAD_N_LEFT_PLACES; at++)
        {
          double units = 0;
          SteadSaleLeft *fact;

          if (!stead_sell_read_units (left->places[at], 0, &units))
            good = FALSE;
          if (!(units > 0))
            continue;
          fact = g_new0 (SteadSaleLeft, 1);
          fact->line_id = left->line_id;
          fact->goes_to = (SteadLeftPlace) at;
          fact->units = units;
          fact->reason = at == STEAD_LEFT_WASTE ? g_strdup (stead_field_get_text (left->reason)) : NULL;
          g_ptr_array_add (up->lefts, fact);
        }
    }
  return good;
}

static SteadSaleCashUp *
read_up (SteadCashUpView *self)
{
  g_autoptr(SteadSaleCashUp) up = stead_sale_cash_up_new ();
  gboolean good = stead_field_read_money (self->keep, stead_sale_float_cents (self->sale), &up->keep_cents);

  g_array_unref (up->pieces);
  up->pieces = stead_sell_read_faces (self->faces, currency_of (self));
  up->sale_id = self->sale_id;
  up->first_id = stead_pick_get (self->first);
  up->second_id = stead_pick_get (self->second);
  up->reason = gtk_widget_get_visible (GTK_WIDGET (self->reason)) ? g_strdup (stead_field_get_text (self->reason)) : NULL;
  up->float_account = stead_pick_get (self->float_from);
  up->deposit_account = stead_pick_get (self->deposit_to);
  up->deposit_slip = g_strdup (stead_field_get_text (self->slip));
  up->change_next = g_strdup (stead_field_get_text (self->change_next));
  up->costs = read_costs (self, &good);
  up->at = stead_sell_now ();
  good &= read_lefts (self, up);
  for (guint i = 0; i < self->hours->len; i++)
    if (gtk_check_button_get_active (self->hours->pdata[i]))
      g_array_append_val (up->shift_ids, ((SteadSaleShift *) self->sale->shifts->pdata[i])->id);
  return good ? g_steal_pointer (&up) : NULL;
}

typedef struct
{
  SteadSaleCashUp  *up;
  SteadCashUpFault  fault;
} Posting;

static gboolean
post_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  Posting *posting = data;

  return stead_sale_cash_up_post (store, posting->up, &posting->fault, error);
}

static void
point_out (SteadCashUpView        *self,
           const SteadCashUpFault *fault,
           const char             *message)
{
  stead_make_say (self->problem, message, FALSE);
  stead_pick_say (self->second, fault->part == STEAD_CASH_UP_PART_PEOPLE ? message : NULL, TRUE);
  stead_pick_say (self->float_from, fault->part == STEAD_CASH_UP_PART_FLOAT ? message : NULL, TRUE);
  stead_field_set_error (self->reason, fault->part == STEAD_CASH_UP_PART_REASON ? message : NULL);
  stead_field_set_error (self->keep, fault->part == STEAD_CASH_UP_PART_DEPOSIT ? message : NULL);
  for (guint i = 0; i < self->lefts->len; i++)
    {
      Left *left = self->lefts->pdata[i];

      stead_make_say (left->problem, fault->part == STEAD_CASH_UP_PART_LEFTS && fault->line_id == left->line_id
                                     ? message : NULL, FALSE);
    }
}

static void
post_cb (SteadCashUpView *self)
{
  g_autoptr(SteadSaleCashUp) up = read_up (self);
  g_autoptr(GError) error = NULL;
  g_autofree char *step = NULL;
  Posting posting = { .up = up };

  if (up == NULL)
    return;
  /* Translators: name of a step to undo; a sale. */
  step = g_strdup_printf (_("cash-up of “%s”"), self->sale->name);
  if (stead_desk_act (self->desk, step, post_act, &posting, &error))
    stead_desk_jump (self->desk, STEAD_TARGET_SALE, self->sale_id);
  else
    point_out (self, &posting.fault, error->message);
}

/* --- the view -------------------------------------------------------------------------------------- */

static void
fill_accounts (SteadPick  *pick,
               SteadStore *store,
               gint64      without,
               const char *none)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, FALSE, NULL);
  gint64 first = 0;

  stead_pick_clear (pick);
  stead_pick_append (pick, 0, none);
  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    {
      const SteadAccount *account = accounts->pdata[i];

      if (account->id == without)
        continue;
      stead_pick_append (pick, account->id, account->name);
      first = first != 0 ? first : account->id;
    }
  stead_pick_show (pick, first);
}

static void
begin (SteadCashUpView *self)
{
  SteadStore *store = stead_desk_get_store (self->desk);

  stead_make_clear (self->face_grid);
  g_clear_pointer (&self->faces, g_ptr_array_unref);
  self->faces = stead_sell_faces (self->face_grid, currency_of (self), G_CALLBACK (update_sum), self);
  stead_cash_picks_people (self->first, store, 0);
  stead_cash_picks_people (self->second, store, 0);
  fill_accounts (self->float_from, store, self->sale->account_id, _("It was in the box already"));
  fill_accounts (self->deposit_to, store, self->sale->account_id, _("It stays in the box"));
  stead_field_set_text (self->reason, "");
  stead_field_set_text (self->slip, "");
  stead_field_set_text (self->change_next, "");
  stead_field_set_currency (self->keep, currency_of (self));
  stead_field_show_money (self->keep, stead_sale_float_cents (self->sale));
  stead_make_say (self->problem, NULL, FALSE);
  show_costs (self);
  show_hours (self);
}

void
stead_cash_up_view_show (SteadCashUpView *self,
                         SteadDesk       *desk,
                         gint64           sale_id)
{
  g_autoptr(GError) error = NULL;
  SteadSale *sale = stead_sale_repo_get (stead_desk_get_store (desk), sale_id, &error);
  gboolean is_other = sale_id != self->sale_id;

  self->desk = desk;
  if (sale == NULL)
    {
      stead_make_say (self->problem, error->message, FALSE);
      return;
    }
  g_clear_pointer (&self->sale, stead_sale_free);
  self->sale = sale;
  self->sale_id = sale_id;
  /* What was typed stays while it is the same sale; what was tallied since is shown. */
  if (is_other || self->paid->len != sale->costs->len || self->hours->len != sale->shifts->len)
    begin (self);
  show_goods (self);
  update_sum (self);
}

static void
stead_cash_up_view_dispose (GObject *object)
{
  SteadCashUpView *self = STEAD_CASH_UP_VIEW (object);

  g_clear_pointer (&self->sale, stead_sale_free);
  g_clear_pointer (&self->faces, g_ptr_array_unref);
  g_clear_pointer (&self->paid, g_ptr_array_unref);
  g_clear_pointer (&self->lefts, g_ptr_array_unref);
  g_clear_pointer (&self->hours, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_cash_up_view_parent_class)->dispose (object);
}

static void
stead_cash_up_view_class_init (SteadCashUpViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_cash_up_view_dispose;
}

static GtkWidget *
box_in (GtkWidget *card)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_box_append (GTK_BOX (card), box);
  return box;
}

static void
add_count (SteadCashUpView *self,
           GtkWidget       *cards)
{
  GtkWidget *card = stead_sell_card (cards, _("How many of each coin and note"));
  GtkWidget *people;

  self->caution = GTK_LABEL (stead_make_label (stead_cash_words_caution (), "caution"));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->caution));
  self->face_grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->face_grid), 18);
  gtk_grid_set_row_spacing (GTK_GRID (self->face_grid), 6);
  gtk_grid_set_column_homogeneous (GTK_GRID (self->face_grid), TRUE);
  gtk_box_append (GTK_BOX (card), self->face_grid);
  self->sum = GTK_LABEL (stead_make_label (NULL, "sentence"));
  gtk_box_append (GTK_BOX (card), GTK_WIDGET (self->sum));
  gtk_box_append (GTK_BOX (card), stead_why_box_new_folded (&self->whys));
  self->reason = stead_sell_field (card, _("Why it differs"), STEAD_FIELD_TEXT);
  people = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_box_set_homogeneous (GTK_BOX (people), TRUE);
  self->first = stead_sell_pick (people, _("Who counted"));
  self->second = stead_sell_pick (people, _("Who counted again"));
  gtk_box_append (GTK_BOX (card), people);
}

static void
add_deposit (SteadCashUpView *self,
             GtkWidget       *cards)
{
  GtkWidget *card = stead_sell_card (cards, _("Where the money goes"));
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->float_from = stead_sell_pick (card, _("Where the float came from, if the cash book does not have it in the box"));
  gtk_box_set_homogeneous (GTK_BOX (row), TRUE);
  self->keep = stead_sell_field (row, _("Stays in the box"), STEAD_FIELD_MONEY);
  self->deposit_to = stead_sell_pick (row, _("The rest goes to"));
  self->slip = stead_sell_field (row, _("Number of the deposit slip"), STEAD_FIELD_TEXT);
  gtk_box_append (GTK_BOX (card), row);
}

static void
stead_cash_up_view_init (SteadCashUpView *self)
{
  GtkWidget *cards, *card, *row;

  self->paid = g_ptr_array_new ();
  self->hours = g_ptr_array_new ();
  self->lefts = g_ptr_array_new_with_free_func (g_free);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  cards = stead_sell_columns (GTK_WIDGET (self));
  add_count (self, cards);
  self->goods = box_in (stead_sell_card (cards, _("What is left over, and where it goes")));
  self->costs = box_in (stead_sell_card (cards, _("What the day cost")));
  add_deposit (self, cards);
  card = stead_sell_card (cards, _("Hours to write down: tick those that are right"));
  self->shifts = box_in (card);
  card = stead_sell_card (cards, _("What to do otherwise next time"));
  self->change_next = stead_sell_field (card, _("Next time"), STEAD_FIELD_TEXT);
  self->problem = GTK_LABEL (stead_make_label (NULL, "warn"));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->problem));
  row = stead_sell_row (GTK_WIDGET (self));
  gtk_widget_add_css_class (stead_sell_button (row, _("Post the cash-up"), G_CALLBACK (post_cb), self), "primary");
}
