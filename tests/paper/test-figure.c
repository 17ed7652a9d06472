/* test-figure.c - what a chart says under the pointer, and value by value by the arrow keys.
 *
 * The window and the page paint the same figure; here it is painted, and asked.
 */
#include "farm.h"
#include "numbers.h"

#include "paper/stead-price-figure.h"

#include <math.h>
#include <string.h>

#define WIDTH 640.0
#define HEIGHT 360.0

static void
paint (SteadFigure *figure)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);

  stead_figure_paint (figure, cr, &style, WIDTH, HEIGHT, TRUE);
  stead_figure_print (cr, WIDTH, HEIGHT, figure);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* (transfer full): value number @i, which the pointer finds where the key goes. */
static char *
said (SteadFigure *figure,
      int          i)
{
  double x = NAN, y = NAN;
  char *text = stead_figure_step (figure, i, &x, &y);
  g_autofree char *under = NULL;

  g_assert_nonnull (text);
  g_assert_true (x >= 0 && x <= WIDTH && y >= 0 && y <= HEIGHT);
  under = stead_figure_hint (figure, x, y);
  g_assert_cmpstr (under, ==, text);
  return text;
}

/* How many values there are; one more is none, and before the first there is none. */
static void
assert_values (SteadFigure *figure,
               int          n)
{
  double x, y;

  g_assert_null (stead_figure_step (figure, n, &x, &y));
  g_assert_null (stead_figure_step (figure, -1, &x, &y));
  for (int i = 0; i < n; i++)
    g_free (said (figure, i));
}

static void
assert_says (SteadFigure *figure,
             int          i,
             const char  *words)
{
  g_autofree char *text = said (figure, i);

  g_assert_cmpstr (text, ==, words);
}

/* --- all products together ------------------------------------------------------------ */

static void
add_line (SteadTogether *together,
          const char    *name,
          double         price_cents,
          double         unit_cents,
          double         planned)
{
  SteadTogetherLine *line = g_new0 (SteadTogetherLine, 1);

  *line = (SteadTogetherLine) { .name = g_strdup (name), .pack = STEAD_PACK_PIECE, .price_cents = price_cents,
                                .unit_cents = unit_cents, .planned = planned };
  g_ptr_array_add (together->lines, line);
}

/* By hand: $120 of costs; 100 at $5 leave $2 each, which is $80; 20 more at $4 leave $1 each: $100. */
static void
test_together (void)
{
  g_autoptr(SteadTogether) together = stead_together_new_empty ("USD");
  g_autoptr(SteadFigure) figure = NULL;

  add_line (together, "Eggs", 500, 300, 100);
  add_line (together, "Sauce", 400, 300, 20);
  together->extra_cents = 12000;
  together->order = STEAD_TOGETHER_AS_LISTED;
  stead_together_settle (together);
  figure = stead_together_figure_new (together);
  g_assert_null (stead_figure_hint (figure, WIDTH / 2, HEIGHT / 2));   /* nothing was painted */
  paint (figure);
  assert_values (figure, 3);
  assert_says (figure, 0, "Before the first sale: −$120.00");
  assert_says (figure, 1, "100 of “Eggs” sold: $500.00 taken in, $80.00 left");
  assert_says (figure, 2, "20 of “Sauce” sold: $580.00 taken in, $100.00 left");
}

/* A day without anything to sell: its costs alone. */
static void
test_nothing_to_sell (void)
{
  g_autoptr(SteadTogether) together = stead_together_new_empty ("USD");
  g_autoptr(SteadFigure) figure = NULL;

  together->extra_cents = 12000;
  stead_together_settle (together);
  figure = stead_together_figure_new (together);
  paint (figure);
  assert_values (figure, 1);
  assert_says (figure, 0, "Before the first sale: −$120.00");
}

/* --- what was sold at which price ---------------------------------------------------------- */

static void
fill (Farm          *farm,
      gconstpointer  data)
{
  farm_set_up (farm, data);
  farm_stock (farm);
  farm_log (farm);
}

static void
add_trial (Farm   *farm,
           gint64  cents,
           double  units,
           int     days_ago)
{
  SteadPriceTrial trial = { .day = farm->today - days_ago, .price_cents = cents, .units = units };

  FARM_DO (farm, stead_price_trial_repo_add (farm->store, farm->product, &trial, &farm_error));
}

static SteadPriceChoice *
choice_of (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadPriceChoice *choice = stead_price_choice_new (farm->store, farm->product, STEAD_PERIOD_WHOLE_BATCH, &error);

  g_assert_no_error (error);
  return choice;
}

/* Today is 2026-03-31. */
static void
test_choice (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadPriceChoice) none = choice_of (farm), choice = NULL;
  g_autoptr(SteadFigure) figure = NULL;

  g_assert_null (stead_choice_figure_new (none));
  add_trial (farm, 400, 120, 30);
  add_trial (farm, 450, 110, 20);
  add_trial (farm, 500, 101, 10);
  choice = choice_of (farm);
  figure = stead_choice_figure_new (choice);
  paint (figure);
  assert_values (figure, 3);
  assert_says (figure, 0, "Mar 1, 2026: 120 dozen sold at $4.00");
  assert_says (figure, 2, "Mar 21, 2026: 101 dozen sold at $5.00");
}

/* One pair draws no line, and is there. */
static void
test_one_trial (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadPriceChoice) choice = NULL;
  g_autoptr(SteadFigure) figure = NULL;

  add_trial (farm, 450, 1, 1);
  choice = choice_of (farm);
  g_assert_false (choice->has_line);
  figure = stead_choice_figure_new (choice);
  paint (figure);
  assert_values (figure, 1);
  assert_says (figure, 0, "Mar 30, 2026: 1 dozen sold at $4.50");
}

/* --- bars ------------------------------------------------------------------------------------ */

/* By hand: 120 eggs; six leave $2.25, 15 of them sell and take 90 eggs; 30 are left for 2.5 dozen at $4. */
static void
test_best_use (void)
{
  g_autoptr(SteadBestUse) use = stead_best_use_new_empty ("USD");
  SteadScarce hens = { .kind = STEAD_SCARCE_PACKS, .name = (char *) "Hens", .pack = STEAD_PACK_DOZEN, .base_per_pack = 12,
                       .amount = 120 };
  g_autoptr(SteadFigure) figure = NULL;

  g_assert_null (stead_best_use_figure_new (use));   /* not worked out */
  stead_best_use_add_scarce (use, &hens);
  stead_best_use_add_line (use, &(SteadBestUseLine) { .name = (char *) "Dozen", .pack = STEAD_PACK_DOZEN,
                                                      .price_cents = 430, .own_cents = 30, .planned = 5, .most = 7 });
  stead_best_use_add_line (use, &(SteadBestUseLine) { .name = (char *) "Six", .pack = STEAD_PACK_HALF_DOZEN,
                                                      .price_cents = 250, .own_cents = 25, .planned = 10, .most = 15 });
  stead_best_use_take (use, 0, 0, 12);
  stead_best_use_take (use, 1, 0, 6);
  stead_best_use_settle (use, FALSE);
  figure = stead_best_use_figure_new (use);
  paint (figure);
  assert_values (figure, 2);
  assert_says (figure, 0, "Dozen: 2.5 dozen, $10.00; the plan has 5 dozen");
  assert_says (figure, 1, "Six: 15 half dozens, $33.75; the plan has 10 half dozens");
  g_assert_null (stead_figure_hint (figure, WIDTH / 2, -5));
  g_assert_cmpfloat (stead_best_use_figure_height (use), >, 0);
}

/* By hand: 72 dozen, all of them sold, bring 72 x $0.90 more at $4.95 than at $4.05. */
static void
test_swings (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadWhatIf) what_if = stead_what_if_new (farm->store, farm->product, STEAD_PERIOD_WHOLE_BATCH, &error);
  g_autoptr(SteadFigure) figure = NULL;
  g_autofree char *price = NULL;
  g_autoptr(GArray) numbers = NULL;

  g_assert_no_error (error);
  g_assert_cmpint (what_if->swings[0].assumption, ==, STEAD_ASSUME_PRICE);
  figure = stead_swing_figure_new (what_if);
  paint (figure);
  assert_values (figure, what_if->n_swings);
  price = said (figure, 0);
  g_assert_true (g_str_has_prefix (price, "Price: $4.05 leaves "));
  numbers = numbers_in (price);
  g_assert_cmpuint (numbers->len, ==, 4);
  g_assert_cmpfloat (g_array_index (numbers, double, 2), ==, 4.95);
  g_assert_cmpfloat_with_epsilon (g_array_index (numbers, double, 3) - g_array_index (numbers, double, 1), 64.80, 0.0101);
}

/* With nothing planned and no costs of the day nothing moves the profit. */
static void
test_no_swings (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadWhatIf) what_if = stead_what_if_new (farm->store, farm->product, STEAD_PERIOD_WHOLE_BATCH, NULL);

  what_if->values[STEAD_ASSUME_PLANNED] = 0;
  what_if->values[STEAD_ASSUME_FIXED] = 0;
  stead_what_if_settle (what_if);
  g_assert_cmpint (what_if->n_swings, ==, 0);
  g_assert_cmpstr (what_if->matters, ==, "Nothing here moves the profit: plan something to sell first.");
  g_assert_null (stead_swing_figure_new (what_if));
}

/* --- seasons ----------------------------------------------------------------------------------- */

/* All as likely as can be but the costs of a day: nothing to $400. */
static SteadHowSure *
season_of (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadHowSure *season = stead_how_sure_new (farm->store, STEAD_PERIOD_12_WEEKS, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < season->ranges->len; i++)
    {
      SteadRange *range = season->ranges->pdata[i];

      range->value.low = range->value.high = range->value.likely;
      if (range->kind == STEAD_RANGE_DAY)
        range->value = (SteadThreePoint) { 0, 5000, 40000 };
    }
  stead_how_sure_settle (season);
  return season;
}

/* Column by column the sums of money meet, from the first to the last. */
static void
test_spread (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadHowSure) season = season_of (farm);
  g_autoptr(SteadFigure) figure = stead_spread_figure_new (season);
  double before = season->low / 100;

  g_assert_true (season->solved);
  paint (figure);
  assert_values (figure, (int) season->n_bins);
  for (int i = 0; i < (int) season->n_bins; i++)
    {
      g_autofree char *text = said (figure, i);
      g_autoptr(GArray) numbers = numbers_in (text);
      guint n = numbers->len;      /* the share may be “none” */

      g_assert_cmpuint (n, >=, 2);
      g_assert_cmpfloat_with_epsilon (g_array_index (numbers, double, n - 2), before, 0.00501);
      before = g_array_index (numbers, double, n - 1);
      g_assert_cmpfloat (before, >, g_array_index (numbers, double, n - 2));
    }
  g_assert_null (stead_figure_hint (figure, -1, HEIGHT / 2));
  g_assert_null (stead_figure_hint (figure, WIDTH + 1, HEIGHT / 2));
}

/* By hand: only the costs of a day move anything, so they come first: $400 on each of twelve days, $4,800. */
static void
test_ranges (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadHowSure) season = season_of (farm);
  g_autoptr(SteadFigure) figure = stead_range_figure_new (season);
  g_autofree char *first = NULL;
  g_autoptr(GArray) numbers = NULL;

  g_assert_cmpint (season->n_days, ==, 12);
  paint (figure);
  assert_values (figure, (int) season->ranges->len);
  first = said (figure, 0);
  numbers = numbers_in (first);
  g_assert_cmpuint (numbers->len, ==, 4);
  g_assert_cmpfloat (g_array_index (numbers, double, 0), ==, 0);
  g_assert_cmpfloat (g_array_index (numbers, double, 2), ==, 400);
  g_assert_cmpfloat_with_epsilon (g_array_index (numbers, double, 1) - g_array_index (numbers, double, 3), 4800, 0.0101);
}

/* A range whose least is more than its most has no season. */
static void
test_upside_down (Farm          *farm,
                  gconstpointer  data)
{
  g_autoptr(SteadHowSure) season = season_of (farm);

  ((SteadRange *) season->ranges->pdata[0])->value = (SteadThreePoint) { 9, 5, 1 };
  stead_how_sure_settle (season);
  g_assert_true (season->upside_down);
  g_assert_null (stead_spread_figure_new (season));
  g_assert_null (stead_range_figure_new (season));
}

/* --- one cost shared ------------------------------------------------------------------------------ */

/* Saylor, Managerial Accounting, appendix 7.10, lumber: $250,000 by 600,000 and 200,000, and by sales of
 * $24,000,000 and $6,000,000: rows joint-01 of tests/reference/goods.csv. */
static void
test_joint (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  SteadJointAnswer *joint = stead_joint_answer_new (farm->store, farm->flock, &error);
  const double eggs[] = { 600000, 1, 40, 0, 0 }, hens[] = { 200000, 1, 30, 0, 0 };
  g_autoptr(SteadFigure) figure = NULL;

  g_assert_no_error (error);
  g_assert_cmpuint (joint->parts->len, ==, 2);
  joint->joint_cents = 25000000;
  memcpy (((SteadJointPart *) joint->parts->pdata[0])->value, eggs, sizeof eggs);
  memcpy (((SteadJointPart *) joint->parts->pdata[1])->value, hens, sizeof hens);
  stead_joint_answer_settle (joint);
  figure = stead_joint_figure_new (joint);
  stead_figure_own (figure, joint, (GDestroyNotify) stead_joint_answer_free);
  paint (figure);
  assert_values (figure, 4);
  assert_says (figure, 0, "Physical share: Eggs $187,500.00, Hens at the end $62,500.00");
  assert_says (figure, 1, "Sales value at split-off: Eggs $200,000.00, Hens at the end $50,000.00");
  g_assert_null (stead_figure_hint (figure, WIDTH / 2, -5));
}

#define ADD(name, test) g_test_add ("/paper/figure/" name, Farm, NULL, fill, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/paper/figure/together", test_together);
  g_test_add_func ("/paper/figure/nothing-to-sell", test_nothing_to_sell);
  ADD ("choice", test_choice);
  ADD ("one-trial", test_one_trial);
  g_test_add_func ("/paper/figure/best-use", test_best_use);
  ADD ("swings", test_swings);
  ADD ("no-swings", test_no_swings);
  ADD ("spread", test_spread);
  ADD ("ranges", test_ranges);
  ADD ("upside-down", test_upside_down);
  ADD ("joint", test_joint);
  return g_test_run ();
}
