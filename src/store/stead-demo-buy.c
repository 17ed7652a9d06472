/* stead-demo-buy.c - what had to be bought for what happened, and what went out.
 *
 * Feed is planned backwards from what is to be on hand today; all else forwards,
 * bought when it runs low.
 */
#include "config.h"

#include <math.h>

#include "core/stead-money.h"
#include "store/stead-demo-private.h"

#define LB_BAG 50.0

void
stead_demo_buy_free (SteadDemoBuy *buy)
{
  g_free (buy->item);
  g_free (buy->from);
  g_free (buy->note);
  g_free (buy);
}

void
stead_demo_use_free (SteadDemoUse *use)
{
  g_free (use->item);
  g_free (use);
}

void
stead_demo_sale_free (SteadDemoSale *sale)
{
  g_free (sale->product);
  g_free (sale);
}

/* --- buying ----------------------------------------------------------------- */

static char *
group_of (const char *item)
{
  return g_strconcat ("item ", item, NULL);
}

/* Prices drift evenly, in quarters of a dollar. */
static gint64
price_of (SteadDemoStory *story,
          const char     *item,
          int             day)
{
  g_autofree char *group = group_of (item);
  g_auto(GStrv) ends = stead_demo_list (&story->reader, group, "price");
  double share = CLAMP ((double) day / story->n_days, 0, 1);
  gint64 first, last;

  if (g_strv_length (ends) != 2)
    {
      stead_demo_fault (&story->reader, group, "price");
      return 0;
    }
  first = stead_demo_cents_of (&story->reader, ends[0]);
  last = stead_demo_cents_of (&story->reader, ends[1]);
  return first + 25 * stead_money_round (share * (double) (last - first) / 25);
}

static double
pack_of (SteadDemoStory *story,
         const char     *item)
{
  g_autofree char *group = group_of (item);

  return stead_demo_number (&story->reader, group, "pack");
}

/* Stores are closed on Sundays. */
static int
open_day (SteadDemoStory *story,
          int             day)
{
  return stead_day_weekday (story->first + day) == 7 ? day - 1 : day;
}

static SteadDemoBuy *
add_buy (SteadDemoStory *story,
         const char     *item,
         int             day,
         int             packs)
{
  g_autofree char *group = group_of (item);
  SteadDemoBuy *buy = g_new0 (SteadDemoBuy, 1);

  buy->day = open_day (story, day);
  buy->item = g_strdup (item);
  buy->packs = packs;
  buy->cents = packs * price_of (story, item, day);
  buy->from = stead_demo_text_if (&story->reader, group, "supplier");
  g_ptr_array_add (story->buys, buy);
  return buy;
}

static void
add_use (SteadDemoStory *story,
         const char     *item,
         int             day,
         double          quantity,
         gboolean        is_sold)
{
  SteadDemoUse *use = g_new0 (SteadDemoUse, 1);

  use->day = day;
  use->item = g_strdup (item);
  use->quantity = quantity;
  use->is_sold = is_sold;
  g_ptr_array_add (story->uses, use);
}

/* --- feed, backwards -------------------------------------------------------------- */

/* A place in the feed that was eaten: all days before @day, and @lb of that day. */
typedef struct
{
  int    day;
  double lb;
} Place;

/* Steps back over @lb of feed; returns what was missing at the beginning. */
static double
step_back (SteadDemoStory *story,
           Place          *place,
           double          lb)
{
  while (lb > 0)
    {
      double part = MIN (lb, place->lb);

      lb -= part;
      place->lb -= part;
      if (place->lb > 0)
        continue;
      if (place->day == 0)
        return lb;
      place->lb = story->days[--place->day].feed_lb;
    }
  return 0;
}

/* As the store room will tell it this morning: 14 days with today, which has no feed yet. */
static double
feed_a_day (SteadDemoStory *story)
{
  double sum = 0;

  for (int i = 1; i < 14 && i <= story->n_days; i++)
    sum += story->days[story->n_days - i].feed_lb;
  return sum / 14;
}

/* The newest receipt leaves feed for so many days and a half; before it one receipt is
 * missing.  Both come in the morning of a day. */
static void
plan_newest (SteadDemoStory *story,
             const char     *item,
             Place          *place)
{
  SteadDemoReader *reader = &story->reader;
  int bags = (int) stead_demo_number (reader, "feed", "bags");
  double left = bags * LB_BAG;
  double wanted = (stead_demo_number (reader, "feed", "days_left") + 0.5) * feed_a_day (story);

  while (place->day > 1 && left - story->days[place->day - 1].feed_lb / 2 > wanted)
    left -= story->days[--place->day].feed_lb;
  add_buy (story, item, place->day, bags)->day = place->day;
  step_back (story, place, stead_demo_number (reader, "feed", "uncovered_lb"));
  place->lb = 0;
}

static void
plan_feed (SteadDemoStory *story)
{
  g_autofree char *item = stead_demo_text (&story->reader, "flock", "feed");
  Place place = { story->n_days, 0 };

  plan_newest (story, item, &place);
  while (place.day > 0 && story->reader.error == NULL)
    {
      int bags = 2 + (int) gsl_rng_uniform_int (story->rng, 2);
      double missing = step_back (story, &place, bags * LB_BAG);
      int day = place.day - 1 - (int) gsl_rng_uniform_int (story->rng, 3);

      if (missing > 0)
        {
          bags -= (int) (missing / LB_BAG);
          story->spilled_lb = fmod (missing, LB_BAG);
          day = -1;
        }
      if (bags > 0)
        add_buy (story, item, MAX (day, -1), bags);
    }
}

/* --- bedding and shell ------------------------------------------------------------ */

/* What is on hand of one item as the days go by. */
typedef struct
{
  SteadDemoStory *story;
  const char     *item;
  double          on_hand;
} Shelf;

/* Takes @quantity on @day, and sees to it that @spare is left. */
static void
shelf_take (Shelf    *shelf,
            int       day,
            double    quantity,
            double    spare,
            int       packs,
            gboolean  is_sold)
{
  if (shelf->on_hand < quantity + spare)
    {
      int more = MAX (packs, (int) ceil ((quantity + spare - shelf->on_hand) / pack_of (shelf->story, shelf->item)));

      add_buy (shelf->story, shelf->item, day - 1, more);
      shelf->on_hand += more * pack_of (shelf->story, shelf->item);
    }
  shelf->on_hand -= quantity;
  add_use (shelf->story, shelf->item, day, quantity, is_sold);
}

/* Gifts are used up first, one pack a change, once they are there. */
typedef struct
{
  char *item;
  int   day;
  int   packs;
} Gift;

static Gift
plan_gift (SteadDemoStory *story)
{
  SteadDemoReader *reader = &story->reader;
  g_auto(GStrv) groups = stead_demo_groups (reader, "gift");
  Gift gift = { NULL, 0, 0 };
  SteadDemoBuy *buy;

  if (*groups == NULL)
    return gift;
  gift.item = stead_demo_text (reader, *groups, "item");
  gift.day = (int) stead_demo_number (reader, *groups, "day");
  gift.packs = (int) stead_demo_number (reader, *groups, "packs");
  buy = add_buy (story, gift.item, gift.day, gift.packs);
  g_free (buy->from);
  buy->from = stead_demo_text (reader, *groups, "from");
  buy->note = stead_demo_text_if (reader, *groups, "note");
  buy->is_gift = TRUE;
  return gift;
}

static void
plan_bedding (SteadDemoStory *story)
{
  SteadDemoReader *reader = &story->reader;
  g_autofree char *item = stead_demo_text (reader, "flock", "bedding");
  int step = (int) stead_demo_number (reader, "flock", "bedding_days");
  int last = story->n_days - (int) stead_demo_number (reader, "flock", "bedding_last");
  double pack = pack_of (story, item);
  Gift gift = plan_gift (story);
  Shelf shelf = { story, item, 0 };

  for (int day = step > 0 ? last % step : story->n_days; day <= last && reader->error == NULL; day += step)
    if (gift.packs > 0 && day > gift.day)
      {
        gift.packs--;
        add_use (story, gift.item, day, pack_of (story, gift.item), FALSE);
      }
    else
      shelf_take (&shelf, day, pack, pack, 4, FALSE);
  g_free (gift.item);
}

static void
plan_shell (SteadDemoStory *story)
{
  g_autofree char *item = stead_demo_text (&story->reader, "flock", "shell");
  double lb = stead_demo_number (&story->reader, "flock", "shell_lb_week");
  Shelf shelf = { story, item, 0 };

  for (int day = 6; day < story->n_days; day += 7)
    shelf_take (&shelf, day, lb, 3, 1, FALSE);
}

/* --- packaging -------------------------------------------------------------------- */

/* The first Saturday of a month. */
static gboolean
is_sale_day (SteadDemoStory *story,
             int             at)
{
  int mday;

  stead_day_split (story->first + at, NULL, NULL, &mday);
  return stead_day_weekday (story->first + at) == 6 && mday <= 7;
}

static Shelf *
shelf_of (SteadDemoStory *story,
          GHashTable     *shelves,
          const char     *item)
{
  Shelf *shelf = g_hash_table_lookup (shelves, item);
  char *name;

  if (shelf != NULL)
    return shelf;
  name = g_strdup (item);
  shelf = g_new0 (Shelf, 1);
  *shelf = (Shelf) { story, name, 0 };
  g_hash_table_insert (shelves, name, shelf);
  return shelf;
}

/* A pack takes one of each of its parts. */
static void
sell_product (SteadDemoStory *story,
              GHashTable     *shelves,
              const char     *group,
              int             day,
              int             eggs)
{
  SteadDemoReader *reader = &story->reader;
  g_auto(GStrv) prices = stead_demo_list (reader, group, "prices");
  g_auto(GStrv) parts = stead_demo_list (reader, group, "parts");
  double share = stead_demo_number (reader, group, "sale_share");
  int packs = (int) (eggs * share / stead_demo_number (reader, group, "eggs"));
  SteadDemoSale *sale;

  if (packs < 1 || prices[0] == NULL || day <= (int) g_ascii_strtod (prices[0], NULL))
    return;
  sale = g_new0 (SteadDemoSale, 1);
  *sale = (SteadDemoSale) { day, g_strdup (group), packs };
  g_ptr_array_add (story->sales, sale);
  for (char **part = parts; *part != NULL; part++)
    shelf_take (shelf_of (story, shelves, *part), day, packs, packs + 12, 1, TRUE);
}

static void
plan_sales (SteadDemoStory *story)
{
  g_autoptr(GHashTable) shelves = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_auto(GStrv) groups = stead_demo_groups (&story->reader, "product");
  int eggs = 0;

  for (int day = 0; day < story->n_days && story->reader.error == NULL; day++)
    {
      eggs += MAX (0, story->days[day].eggs - story->days[day].cracked);
      if (!is_sale_day (story, day))
        continue;
      for (char **group = groups; *group != NULL; group++)
        sell_product (story, shelves, *group, day, eggs);
      eggs = 0;
    }
}

/* --- all -------------------------------------------------------------------------- */

static int
compare_buys (gconstpointer a,
              gconstpointer b)
{
  return (*(SteadDemoBuy * const *) a)->day - (*(SteadDemoBuy * const *) b)->day;
}

static int
compare_uses (gconstpointer a,
              gconstpointer b)
{
  return (*(SteadDemoUse * const *) a)->day - (*(SteadDemoUse * const *) b)->day;
}

gboolean
stead_demo_make_buys (SteadDemoStory *story)
{
  plan_feed (story);
  plan_bedding (story);
  plan_shell (story);
  plan_sales (story);
  g_ptr_array_sort (story->buys, compare_buys);
  g_ptr_array_sort (story->uses, compare_uses);
  return story->reader.error == NULL;
}
