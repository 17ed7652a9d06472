/* stead-sale-sheets.c - the papers that are filled in on the day of a sale and after it: tally
 * sheet, float and cash-up, orders, and thanks to the helpers.
 *
 * What is written in by hand has a cell with room for a pencil.
 */
#include "config.h"

#include "answer/stead-cash-words.h"
#include "core/stead-coins.h"
#include "core/stead-hours.h"
#include "core/stead-money.h"
#include "paper/stead-sale-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Room for a pencil. */
#define BLANK "\n"

#define ORDER_LINES 24
#define PRICE_LINES 3

/* Lines of text that the strokes of all products share, and what one has at least and at most. */
#define STROKE_LINES 34
#define FEWEST_STROKE_LINES 3
#define MOST_STROKE_LINES 8

/* --- the tally ------------------------------------------------------------------------------- */

/* As many empty lines as the page has for one of @n products. */
static char *
stroke_room (guint n)
{
  guint lines = CLAMP (STROKE_LINES / MAX (1, n), FEWEST_STROKE_LINES, MOST_STROKE_LINES);

  return g_strnfill (lines - 1, '\n');
}

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
  g_auto(SteadSaleFacts) facts = { 0 };
  g_autoptr(SteadPages) pages = NULL;
  g_autofree char *room = NULL;

  if (!stead_sale_facts_read (store, of, &facts, error))
    return NULL;
  room = stroke_room (facts.sale->goods->len);
  pages = stead_sale_paper_begin (&facts, _("tally sheet"));
  stead_pages_add_lead (pages, _("A stroke for each one that is sold. What is tasted, given away or spoiled has its own column."));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < facts.sale->goods->len; i++)
    {
      const SteadSaleGood *good = facts.sale->goods->pdata[i];
      g_autofree char *price = stead_sale_paper_money (&facts, (double) good->price_cents);
      /* Translators: a product and its price, one under the other. */
      g_autofree char *name = g_strdup_printf (_("%s\n%s"), good->name, price);
      g_autofree char *brought = stead_words_units (good->pack, stead_sale_good_brought (good));

      stead_sale_paper_row (pages, STEAD_ROW_PLAIN, name, brought, room, NULL, NULL, NULL);
    }
  stead_pages_add_heading (pages, _("Prices that were changed, and when"));
  {
    const SteadPagesColumn one[] = { { NULL, STEAD_ALIGN_LEFT, 1 } };

    stead_pages_add_table (pages, one, 1);
    for (int i = 0; i < PRICE_LINES; i++)
      stead_sale_paper_row (pages, STEAD_ROW_PLAIN, BLANK, NULL, NULL, NULL, NULL, NULL);
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
           const SteadSaleFacts *facts)
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
  g_autofree char *sum = stead_sale_paper_money (facts, (double) stead_sale_float_cents (facts->sale));

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (gsize i = 0; i < n; i++)
    {
      gint64 pieces = pieces_of (facts->sale, faces[i]);
      g_autofree char *face = stead_sale_paper_money (facts, (double) faces[i]);
      g_autofree char *number = pieces > 0 ? g_strdup_printf ("%" G_GINT64_FORMAT, pieces) : NULL;
      g_autofree char *worth = pieces > 0 ? stead_sale_paper_money (facts, (double) (pieces * faces[i])) : NULL;

      stead_sale_paper_row (pages, STEAD_ROW_PLAIN, face, number, worth, NULL, NULL, NULL);
    }
  stead_sale_paper_row (pages, STEAD_ROW_TOTAL, _("Together"), NULL, sum, NULL, NULL, NULL);
}

static void
add_sums (SteadPages *pages)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_LEFT, 0.6 } };

  stead_pages_add_heading (pages, _("Does it agree?"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  stead_sale_paper_row (pages, STEAD_ROW_PLAIN, _("Float + taken by the tally − paid out with slips"), BLANK, NULL, NULL, NULL, NULL);
  stead_sale_paper_row (pages, STEAD_ROW_PLAIN, _("Counted"), BLANK, NULL, NULL, NULL, NULL);
  stead_sale_paper_row (pages, STEAD_ROW_PLAIN, _("Over or short, and why"), BLANK, NULL, NULL, NULL, NULL);
  stead_sale_paper_row (pages, STEAD_ROW_PLAIN, _("To the deposit, number of the slip"), BLANK, NULL, NULL, NULL, NULL);
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

SteadPages *
stead_float_paper_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  g_auto(SteadSaleFacts) facts = { 0 };
  g_autoptr(SteadPages) pages = NULL;

  if (!stead_sale_facts_read (store, of, &facts, error))
    return NULL;
  pages = stead_sale_paper_begin (&facts, _("float and cash-up"));
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
  g_auto(SteadSaleFacts) facts = { 0 };
  g_autoptr(SteadPages) pages = NULL;
  g_autoptr(GPtrArray) orders = NULL;

  if (!stead_sale_facts_read (store, of, &facts, error))
    return NULL;
  orders = stead_sale_order_list (store, facts.sale->id, error);
  if (orders == NULL)
    return NULL;
  pages = stead_sale_paper_begin (&facts, _("order list"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < orders->len; i++)
    {
      const SteadSaleOrder *order = orders->pdata[i];
      const SteadSaleGood *good = stead_sale_find_good (facts.sale, order->line_id);
      g_autofree char *amount = good != NULL ? stead_words_units (good->pack, order->units) : NULL;
      g_autofree char *due = good != NULL ? stead_sale_paper_money (&facts, order->units * (double) good->price_cents) : NULL;

      stead_sale_paper_row (pages, STEAD_ROW_PLAIN, order->who != NULL ? order->who : _("no name"), good != NULL ? good->name : "–",
               amount, order->paid ? _("paid") : due, order->tap_id != 0 ? "☑" : "☐", order->note);
    }
  for (guint i = orders->len; i < ORDER_LINES; i++)
    stead_sale_paper_row (pages, STEAD_ROW_PLAIN, BLANK, NULL, NULL, NULL, "☐", NULL);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}

/* --- thanks ------------------------------------------------------------------------------------------ */

/* Hours that were written down; before that the planned ones. */
static void
add_thanks (SteadPages      *pages,
            const SteadSaleFacts     *facts,
            const GPtrArray *hours)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_LEFT, 1 },
                                       { C_("column of a sale plan", "Hours"), STEAD_ALIGN_RIGHT, 0 } };

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < hours->len; i++)
    {
      const SteadWorkSpan *span = hours->pdata[i];
      g_autofree char *time = stead_hours_format ((gint64) round (span->minutes));

      stead_sale_paper_row (pages, STEAD_ROW_PLAIN, span->person_name, span->duty, time, NULL, NULL, NULL);
    }
  for (guint i = 0; hours->len == 0 && i < facts->sale->shifts->len; i++)
    {
      const SteadSaleShift *shift = facts->sale->shifts->pdata[i];
      g_autofree char *time = stead_hours_format (shift->to_min - shift->from_min - shift->break_min);

      stead_sale_paper_row (pages, STEAD_ROW_PLAIN, shift->person_name, shift->duty != NULL ? shift->duty : facts->sale->name, time,
               NULL, NULL, NULL);
    }
}

SteadPages *
stead_thanks_paper_new (SteadStore               *store,
                        const char               *of,
                        const SteadPaperOptions  *options,
                        GError                  **error)
{
  g_auto(SteadSaleFacts) facts = { 0 };
  g_autoptr(SteadPages) pages = NULL;
  g_autoptr(GPtrArray) hours = NULL;
  g_autofree char *taken = NULL;
  g_autofree char *text = NULL;
  SteadSaleTill till;

  if (!stead_sale_facts_read (store, of, &facts, error))
    return NULL;
  hours = stead_work_repo_of_sale (store, facts.sale->id, error);
  if (hours == NULL || !stead_sale_till (store, facts.sale, NULL, NULL, &till, error))
    return NULL;
  pages = stead_sale_paper_begin (&facts, _("thank you"));
  taken = stead_sale_paper_money (&facts, (double) (till.takings_cents + till.ahead_cents));
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
