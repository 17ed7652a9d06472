/* stead-sale-paper.c - the papers of a sale day: plan, tally sheet, float and cash-up,
 * orders, and thanks to the helpers.
 *
 * What is written in by hand has a cell with room for a pencil.
 */
#include "config.h"

#include "answer/stead-cash-words.h"
#include "answer/stead-sale-answer.h"
#include "answer/stead-sale-lots.h"
#include "answer/stead-subject.h"
#include "core/stead-coins.h"
#include "core/stead-hours.h"
#include "core/stead-money.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Room for a pencil. */
#define BLANK "\n"

#define ORDER_LINES 12

typedef struct
{
  SteadImprint *imprint;
  SteadFarm    *farm;
  SteadSale    *sale;
} Facts;

static void
facts_clear (Facts *facts)
{
  g_clear_pointer (&facts->imprint, stead_imprint_free);
  g_clear_pointer (&facts->farm, stead_farm_free);
  g_clear_pointer (&facts->sale, stead_sale_free);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Facts, facts_clear)

static gboolean
read_facts (SteadStore  *store,
            const char  *of,
            Facts       *facts,
            GError     **error)
{
  gint64 id;

  if (!stead_subject_sale (store, of, &id, error))
    return FALSE;
  facts->imprint = stead_imprint_new (store, error);
  facts->farm = facts->imprint != NULL ? stead_farm_repo_get (store, error) : NULL;
  facts->sale = facts->farm != NULL ? stead_sale_repo_get (store, id, error) : NULL;
  return facts->sale != NULL;
}

/* Day, hours and place: whoever holds the paper has to be there. */
static void
add_when (SteadPages *pages,
          const char *when)
{
  g_autofree char *markup = g_markup_escape_text (when, -1);

  stead_pages_add_text (pages, markup);
}

static SteadPages *
begin (const Facts *facts,
       const char  *what)
{
  g_autofree char *when = stead_sale_when (facts->sale);
  /* Translators: a sale, and what the paper is: "Winter market: tally sheet". */
  g_autofree char *title = g_strdup_printf (_("%s: %s"), facts->sale->name, what);
  SteadPages *pages = stead_pages_new (facts->imprint, title, when);

  stead_pages_add_title (pages, title);
  add_when (pages, when);
  return pages;
}

static char *
money (const Facts *facts,
       double       cents)
{
  return isnan (cents) ? g_strdup ("–") : stead_money_format (stead_money_round (cents), facts->farm->currency);
}

static void
add_row (SteadPages *pages,
         SteadRowLook look,
         const char *a,
         const char *b,
         const char *c,
         const char *d,
         const char *e,
         const char *f)
{
  const char *cells[] = { a, b, c, d, e, f };

  stead_pages_add_row (pages, look, STEAD_PAGES_NO_KEY, cells);
}

static void
add_signatures (SteadPages *pages)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 0 }, { NULL, STEAD_ALIGN_LEFT, 1 },
                                       { NULL, STEAD_ALIGN_LEFT, 0 }, { NULL, STEAD_ALIGN_LEFT, 0.4 } };
  const char *first[] = { _("Counted by"), "\n\n", _("Time"), NULL };
  const char *second[] = { _("Counted again by"), "\n\n", _("Time"), NULL };
  /* Rules stand between rows: this one gives the second signature its line. */
  const char *end[] = { NULL, NULL, NULL, NULL };

  stead_pages_add_heading (pages, _("Two people sign"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, first);
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, second);
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, end);
}

/* --- the plan ------------------------------------------------------------------------------ */

static void
add_plan_goods (SteadPages            *pages,
                const Facts           *facts,
                const SteadSaleAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a sale plan", "Product"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of a sale plan", "Bring"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a sale plan", "Price"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a sale plan", "Cost of one"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a sale plan", "Asked for"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a sale plan", "Pays best"), STEAD_ALIGN_RIGHT, 0 },
  };

  stead_pages_add_heading (pages, _("How many to bring"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = answer->lines->pdata[i];
      g_autofree char *bring = stead_words_units (line->good->pack, line->good->planned);
      g_autofree char *price = money (facts, (double) line->good->price_cents);
      g_autofree char *cost = money (facts, line->unit_cents);
      g_autofree char *asked = isnan (line->demand_units) ? NULL
                               : stead_words_units (line->good->pack, round (line->demand_units));
      g_autofree char *best = isnan (line->best_units) ? NULL : stead_words_units (line->good->pack, line->best_units);

      add_row (pages, STEAD_ROW_PLAIN, line->good->name, bring, price, cost, asked != NULL ? asked : "–",
               best != NULL ? best : "–");
    }
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = answer->lines->pdata[i];
      g_autofree char *text = line->text != NULL ? g_strdup_printf (_("%s: %s"), line->good->name, line->text) : NULL;

      if (text != NULL)
        stead_pages_add_note (pages, text);
    }
}

static gboolean
has_lots (const SteadSaleAnswer *answer)
{
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = answer->lines->pdata[i];

      if (line->lots != NULL && line->good->planned > 0)
        return TRUE;
    }
  return FALSE;
}

/* Whoever packs reads it: a box to tick for each lot. */
static void
add_line_lots (SteadPages                *pages,
               const SteadSaleLineAnswer *line)
{
  double rest = stead_sale_lots_rest (line->lots, line->good->planned);

  for (guint i = 0; i < line->lots->len; i++)
    {
      const SteadSaleLotChoice *choice = line->lots->pdata[i];
      g_autofree char *amount = stead_words_units (line->good->pack, choice->units);
      g_autofree char *day = choice->best_by != STEAD_DAY_NONE ? stead_day_format (choice->best_by, STEAD_DAY_STYLE_SHORT)
                                                                : g_strdup ("–");

      if (choice->units > 0)
        add_row (pages, STEAD_ROW_PLAIN, "☐", line->good->name, choice->code, day, amount, NULL);
    }
  if (rest > 0)
    {
      g_autofree char *amount = stead_words_units (line->good->pack, rest);

      add_row (pages, STEAD_ROW_PLAIN, "☐", line->good->name, _("made or harvested until then"), "–", amount, NULL);
    }
}

static void
add_plan_lots (SteadPages            *pages,
               const SteadSaleAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { NULL, STEAD_ALIGN_LEFT, 0 },
    { C_("column of a sale plan", "Product"), STEAD_ALIGN_LEFT, 0.8 },
    { C_("column of a sale plan", "Lot"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of a sale plan", "Best by"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a sale plan", "Take"), STEAD_ALIGN_RIGHT, 0 },
  };

  if (!has_lots (answer))
    return;
  stead_pages_add_heading (pages, _("Out of which lots"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = answer->lines->pdata[i];

      if (line->lots != NULL && line->good->planned > 0)
        add_line_lots (pages, line);
    }
}

static void
add_plan_costs (SteadPages  *pages,
                const Facts *facts)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_RIGHT, 0 } };
  gint64 sum = 0;
  g_autofree char *total = NULL;

  if (facts->sale->costs->len == 0)
    return;
  stead_pages_add_heading (pages, _("What the day costs"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < facts->sale->costs->len; i++)
    {
      const SteadSaleCost *cost = facts->sale->costs->pdata[i];
      g_autofree char *cents = money (facts, (double) stead_sale_cost_paid (cost));

      sum += stead_sale_cost_paid (cost);
      add_row (pages, STEAD_ROW_PLAIN, cost->name, cents, NULL, NULL, NULL, NULL);
    }
  total = money (facts, (double) sum);
  add_row (pages, STEAD_ROW_TOTAL, _("Together"), total, NULL, NULL, NULL, NULL);
}

static void
add_plan_shifts (SteadPages  *pages,
                 const Facts *facts)
{
  const SteadPagesColumn columns[] = { { C_("column of a sale plan", "Helper"), STEAD_ALIGN_LEFT, 1 },
                                       { C_("column of a sale plan", "Duty"), STEAD_ALIGN_LEFT, 1 },
                                       { C_("column of a sale plan", "From, to"), STEAD_ALIGN_LEFT, 0 },
                                       { C_("column of a sale plan", "Hours"), STEAD_ALIGN_RIGHT, 0 } };

  if (facts->sale->shifts->len == 0)
    return;
  stead_pages_add_heading (pages, _("Who helps, and when"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < facts->sale->shifts->len; i++)
    {
      const SteadSaleShift *shift = facts->sale->shifts->pdata[i];
      g_autofree char *from = stead_sale_clock (shift->from_min);
      g_autofree char *to = stead_sale_clock (shift->to_min);
      g_autofree char *span = g_strdup_printf (_("%s to %s"), from, to);
      g_autofree char *hours = stead_hours_format (shift->to_min - shift->from_min - shift->break_min);

      add_row (pages, STEAD_ROW_PLAIN, shift->person_name, shift->duty != NULL ? shift->duty : "–", span, hours, NULL, NULL);
    }
}

static void
add_bring (SteadPages  *pages,
           const Facts *facts)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 0 }, { NULL, STEAD_ALIGN_LEFT, 1 } };

  if (facts->sale->bring->len == 0)
    return;
  stead_pages_add_heading (pages, _("What to bring"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < facts->sale->bring->len; i++)
    {
      const SteadSaleBring *bring = facts->sale->bring->pdata[i];

      add_row (pages, STEAD_ROW_PLAIN, bring->packed ? "☑" : "☐", bring->text, NULL, NULL, NULL, NULL);
    }
}

SteadPages *
stead_sale_paper_new (SteadStore               *store,
                      const char               *of,
                      const SteadPaperOptions  *options,
                      GError                  **error)
{
  g_auto(Facts) facts = { 0 };
  g_autoptr(SteadSaleAnswer) answer = NULL;
  g_autoptr(SteadPages) pages = NULL;

  if (!read_facts (store, of, &facts, error))
    return NULL;
  answer = stead_sale_answer_new (store, facts.sale->id, error);
  if (answer == NULL)
    return NULL;
  pages = begin (&facts, _("plan"));
  stead_pages_add_lead (pages, answer->sentence);
  if (answer->caution != NULL)
    stead_pages_add_caution (pages, answer->caution);
  add_plan_goods (pages, &facts, answer);
  add_plan_lots (pages, answer);
  add_plan_costs (pages, &facts);
  add_plan_shifts (pages, &facts);
  add_bring (pages, &facts);
  if (facts.sale->note != NULL)
    stead_pages_add_note (pages, facts.sale->note);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}

/* --- the tally ------------------------------------------------------------------------------- */

SteadPages *
stead_tally_paper_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a tally", "Product"), STEAD_ALIGN_LEFT, 0.5 },
    { C_("column of a tally", "Brought"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a tally", "Sold: a stroke each"), STEAD_ALIGN_LEFT, 1.4 },
    { C_("column of a tally", "Samples, given, spoiled"), STEAD_ALIGN_LEFT, 0.7 },
    { C_("column of a tally", "Left"), STEAD_ALIGN_LEFT, 0.3 },
  };
  g_auto(Facts) facts = { 0 };
  g_autoptr(SteadPages) pages = NULL;

  if (!read_facts (store, of, &facts, error))
    return NULL;
  pages = begin (&facts, _("tally sheet"));
  stead_pages_add_lead (pages, _("A stroke for each one that is sold. What is tasted, given away or spoiled has its own column."));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < facts.sale->goods->len; i++)
    {
      const SteadSaleGood *good = facts.sale->goods->pdata[i];
      g_autofree char *price = money (&facts, (double) good->price_cents);
      /* Translators: a product and its price, one under the other. */
      g_autofree char *name = g_strdup_printf (_("%s\n%s"), good->name, price);
      g_autofree char *brought = stead_words_units (good->pack, stead_sale_good_brought (good));

      add_row (pages, STEAD_ROW_PLAIN, name, brought, "\n\n\n", NULL, NULL, NULL);
    }
  stead_pages_add_heading (pages, _("Prices that were changed, and when"));
  {
    const SteadPagesColumn one[] = { { NULL, STEAD_ALIGN_LEFT, 1 } };

    stead_pages_add_table (pages, one, 1);
    for (int i = 0; i < 2; i++)
      add_row (pages, STEAD_ROW_PLAIN, BLANK, NULL, NULL, NULL, NULL, NULL);
  }
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}

/* --- float and cash-up -------------------------------------------------------------------------- */

static gint64
pieces_of (const SteadSale *sale,
           gint64           face)
{
  for (guint i = 0; i < sale->float_pieces->len; i++)
    if (g_array_index (sale->float_pieces, SteadCashPiece, i).face_cents == face)
      return g_array_index (sale->float_pieces, SteadCashPiece, i).pieces;
  return 0;
}

static void
add_faces (SteadPages  *pages,
           const Facts *facts)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a count", "Coin or note"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a count", "Float, pieces"), STEAD_ALIGN_RIGHT, 0.5 },
    { C_("column of a count", "Float, money"), STEAD_ALIGN_RIGHT, 0.6 },
    { C_("column of a count", "Counted, pieces"), STEAD_ALIGN_LEFT, 0.8 },
    { C_("column of a count", "Counted, money"), STEAD_ALIGN_LEFT, 0.8 },
  };
  gsize n = 0;
  const gint64 *faces = stead_coins_faces (facts->farm->currency, &n);
  g_autofree char *sum = money (facts, (double) stead_sale_float_cents (facts->sale));

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (gsize i = 0; i < n; i++)
    {
      gint64 pieces = pieces_of (facts->sale, faces[i]);
      g_autofree char *face = money (facts, (double) faces[i]);
      g_autofree char *number = pieces > 0 ? g_strdup_printf ("%" G_GINT64_FORMAT, pieces) : NULL;
      g_autofree char *worth = pieces > 0 ? money (facts, (double) (pieces * faces[i])) : NULL;

      add_row (pages, STEAD_ROW_PLAIN, face, number, worth, NULL, NULL, NULL);
    }
  add_row (pages, STEAD_ROW_TOTAL, _("Together"), NULL, sum, NULL, NULL, NULL);
}

static void
add_sums (SteadPages *pages)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_LEFT, 0.6 } };

  stead_pages_add_heading (pages, _("Does it agree?"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  add_row (pages, STEAD_ROW_PLAIN, _("Float + taken by the tally − paid out with slips"), BLANK, NULL, NULL, NULL, NULL);
  add_row (pages, STEAD_ROW_PLAIN, _("Counted"), BLANK, NULL, NULL, NULL, NULL);
  add_row (pages, STEAD_ROW_PLAIN, _("Over or short, and why"), BLANK, NULL, NULL, NULL, NULL);
  add_row (pages, STEAD_ROW_PLAIN, _("To the deposit, number of the slip"), BLANK, NULL, NULL, NULL, NULL);
}

SteadPages *
stead_float_paper_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  g_auto(Facts) facts = { 0 };
  g_autoptr(SteadPages) pages = NULL;

  if (!read_facts (store, of, &facts, error))
    return NULL;
  pages = begin (&facts, _("float and cash-up"));
  stead_pages_add_lead (pages, _("Two people count the float before the sale, and all that is in the box after it."));
  stead_pages_add_caution (pages, stead_cash_words_caution ());
  add_faces (pages, &facts);
  add_sums (pages);
  add_signatures (pages);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}

/* --- orders --------------------------------------------------------------------------------------- */

SteadPages *
stead_order_paper_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  const SteadPagesColumn columns[] = {
    { C_("column of orders", "Who"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of orders", "What"), STEAD_ALIGN_LEFT, 0.8 },
    { C_("column of orders", "How many"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of orders", "To pay"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of orders", "Collected"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of orders", "Note"), STEAD_ALIGN_LEFT, 0.8 },
  };
  g_auto(Facts) facts = { 0 };
  g_autoptr(SteadPages) pages = NULL;
  g_autoptr(GPtrArray) orders = NULL;

  if (!read_facts (store, of, &facts, error))
    return NULL;
  orders = stead_sale_order_list (store, facts.sale->id, error);
  if (orders == NULL)
    return NULL;
  pages = begin (&facts, _("order list"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < orders->len; i++)
    {
      const SteadSaleOrder *order = orders->pdata[i];
      const SteadSaleGood *good = stead_sale_find_good (facts.sale, order->line_id);
      g_autofree char *amount = good != NULL ? stead_words_units (good->pack, order->units) : NULL;
      g_autofree char *due = good != NULL ? money (&facts, order->units * (double) good->price_cents) : NULL;

      add_row (pages, STEAD_ROW_PLAIN, order->who != NULL ? order->who : _("no name"), good != NULL ? good->name : "–",
               amount, order->paid ? _("paid") : due, order->tap_id != 0 ? "☑" : "☐", order->note);
    }
  for (guint i = orders->len; i < ORDER_LINES; i++)
    add_row (pages, STEAD_ROW_PLAIN, BLANK, NULL, NULL, NULL, "☐", NULL);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}

/* --- thanks ------------------------------------------------------------------------------------------ */

/* Hours that were written down; before that the planned ones. */
static void
add_thanks (SteadPages      *pages,
            const Facts     *facts,
            const GPtrArray *hours)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_LEFT, 1 },
                                       { C_("column of a sale plan", "Hours"), STEAD_ALIGN_RIGHT, 0 } };

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < hours->len; i++)
    {
      const SteadWorkSpan *span = hours->pdata[i];
      g_autofree char *time = stead_hours_format ((gint64) round (span->minutes));

      add_row (pages, STEAD_ROW_PLAIN, span->person_name, span->duty, time, NULL, NULL, NULL);
    }
  for (guint i = 0; hours->len == 0 && i < facts->sale->shifts->len; i++)
    {
      const SteadSaleShift *shift = facts->sale->shifts->pdata[i];
      g_autofree char *time = stead_hours_format (shift->to_min - shift->from_min - shift->break_min);

      add_row (pages, STEAD_ROW_PLAIN, shift->person_name, shift->duty != NULL ? shift->duty : facts->sale->name, time,
               NULL, NULL, NULL);
    }
}

SteadPages *
stead_thanks_paper_new (SteadStore               *store,
                        const char               *of,
                        const SteadPaperOptions  *options,
                        GError                  **error)
{
  g_auto(Facts) facts = { 0 };
  g_autoptr(SteadPages) pages = NULL;
  g_autoptr(GPtrArray) hours = NULL;
  g_autofree char *taken = NULL;
  g_autofree char *text = NULL;
  SteadSaleTill till;

  if (!read_facts (store, of, &facts, error))
    return NULL;
  hours = stead_work_repo_of_sale (store, facts.sale->id, error);
  if (hours == NULL || !stead_sale_till (store, facts.sale, NULL, NULL, &till, error))
    return NULL;
  pages = begin (&facts, _("thank you"));
  taken = money (&facts, (double) (till.takings_cents + till.ahead_cents));
  /* Translators: a farm, and a sum of money. */
  text = till.takings_cents > 0 ? g_strdup_printf (_("%s thanks all who helped. The stall took %s; it goes on to the animals, "
                                                     "the crops and the next thing to build."), facts.farm->name, taken)
         : g_strdup_printf (_("%s thanks all who help."), facts.farm->name);
  {
    g_autofree char *lead = g_markup_escape_text (text, -1);

    stead_pages_add_lead (pages, lead);
  }
  add_thanks (pages, &facts, hours);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}
