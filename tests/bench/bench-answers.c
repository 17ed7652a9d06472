/* bench-answers.c - what a page asks of a farm, and how long each question takes.
 *
 * usage: bench-answers FARM [OTHER...]
 *
 * Prints for each farm the median over some rounds, warm, in ms of the processor's
 * own time: other programs do not count.  Run it on the demo farm and on one of
 * make-big-farm to see what grows with the log.
 */
#include "config.h"

#include <gio/gio.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "answer/stead-cost-answer.h"
#include "answer/stead-due-answer.h"
#include "answer/stead-flock-answer.h"
#include "answer/stead-price-answer.h"
#include "answer/stead-stock-answer.h"
#include "store/stead-flock-repo.h"
#include "store/stead-lot-repo.h"

#define ROUNDS 9
#define PAGE_ROWS 100

typedef struct
{
  SteadStore *store;
  gint64      flock;
  gint64      product;   /* 0: none */
  SteadDay    first;     /* of the flock */
  SteadDay    today;
} Asked;

typedef void (*Ask) (const Asked *asked);

static void
must (gboolean  done,
      GError   *error)
{
  if (!done)
    g_error ("%s", error->message);
}

static void
ask_flock (const Asked *asked)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFlockAnswer) answer = stead_flock_answer_new (asked->store, asked->flock, &error);

  must (answer != NULL, error);
}

static void
ask_totals (const Asked *asked)
{
  g_autoptr(GError) error = NULL;
  SteadFlockTotals totals;

  must (stead_flock_repo_totals (asked->store, asked->flock, asked->first, asked->today, &totals, &error), error);
}

static void
ask_weeks (const Asked *asked)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GArray) weeks = stead_flock_repo_weeks (asked->store, asked->flock, asked->first, asked->today, &error);

  must (weeks != NULL, error);
}

static void
ask_uses (const Asked *asked)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) uses = stead_lot_repo_uses (asked->store, asked->flock, asked->first, asked->today, &error);

  must (uses != NULL, error);
}

static void
ask_alive (const Asked *asked)
{
  g_autoptr(GError) error = NULL;

  must (stead_flock_repo_alive (asked->store, asked->flock, asked->today, &error) >= 0, error);
}

static void
ask_due (const Asked *asked)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadDueAnswer) answer = stead_due_answer_new (asked->store, &error);

  must (answer != NULL, error);
}

static void
ask_stock (const Asked *asked)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStockAnswer) answer = stead_stock_answer_new (asked->store, &error);

  must (answer != NULL, error);
}

static void
ask_price (const Asked *asked)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPriceAnswer) answer = NULL;

  if (asked->product == 0)
    return;
  answer = stead_price_answer_new (asked->store, asked->product, STEAD_PERIOD_12_WEEKS, &error);
  must (answer != NULL, error);
}

static void
ask_log_page (const Asked *asked)
{
  g_autoptr(GError) error = NULL;
  gint64 n = stead_flock_repo_count_entries (asked->store, asked->flock, &error);
  g_autoptr(GPtrArray) first = stead_flock_repo_page_entries (asked->store, asked->flock, 0, PAGE_ROWS, &error);
  g_autoptr(GPtrArray) middle = stead_flock_repo_page_entries (asked->store, asked->flock, n / 2, PAGE_ROWS, &error);

  must (first != NULL && middle != NULL, error);
}

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* Time that the processor spent on this thread. */
static double
own_ms (void)
{
  struct timespec t;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &t);
  return (double) t.tv_sec * 1000 + (double) t.tv_nsec / 1e6;
}

static double
median_ms (Ask          ask,
           const Asked *asked)
{
  double times[ROUNDS];

  ask (asked);
  for (int i = 0; i < ROUNDS; i++)
    {
      double start = own_ms ();

      ask (asked);
      times[i] = own_ms () - start;
    }
  qsort (times, ROUNDS, sizeof *times, compare);
  return times[ROUNDS / 2];
}

int
main (int    argc,
      char **argv)
{
  static const struct { const char *name; Ask ask; } questions[] = {
    { "flock", ask_flock }, { "  totals of the flock's life", ask_totals }, { "  its weeks", ask_weeks },
    { "  what it used", ask_uses }, { "  hens alive", ask_alive },
     { "due", ask_due }, { "stock", ask_stock }, { "price", ask_price },
    { "log, first and middle page", ask_log_page },
  };

  for (int i = 1; i < argc; i++)
    {
      g_autoptr(GError) error = NULL;
      g_autoptr(SteadStore) store = stead_store_open (argv[i], STEAD_STORE_OPEN_DEFER_CHECK, &error);
      g_autoptr(GPtrArray) flocks = NULL;
      g_autoptr(GPtrArray) products = NULL;
      Asked asked = { .store = store };

      must (store != NULL, error);
      flocks = stead_flock_repo_list (store, TRUE, &error);
      products = stead_product_repo_list (store, TRUE, &error);
      must (flocks != NULL && flocks->len > 0 && products != NULL, error);
      asked.flock = ((const SteadFlock *) flocks->pdata[0])->id;
      asked.first = ((const SteadFlock *) flocks->pdata[0])->housed_on;
      asked.today = stead_store_get_today (store);
      asked.product = products->len > 0 ? ((const SteadProduct *) products->pdata[0])->id : 0;
      printf ("%s\n", argv[i]);
      for (gsize j = 0; j < G_N_ELEMENTS (questions); j++)
        printf ("  %-28s %9.2f ms\n", questions[j].name, median_ms (questions[j].ask, &asked));
    }
  return EXIT_SUCCESS;
}
