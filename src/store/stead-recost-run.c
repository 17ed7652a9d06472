/* stead-recost-run.c - movements in memory, costed in order of day. */
#include "config.h"

#include "core/stead-money.h"
#include "store/stead-recost-private.h"
#include "store/stead-repo-private.h"

/* What a batch used after the day that it was done changes what it made back then,
 * which may change what it used.  It settles in two rounds; a damaged file may not. */
#define MOST_ROUNDS 8

typedef struct
{
  GArray     *moves;
  GHashTable *batches;
  GPtrArray  *makers;    /* of SteadRecostBatch: still to be done on the day that runs */
} Run;

static SteadRecostMove *
move_at (Run   *run,
         guint  at)
{
  return &g_array_index (run->moves, SteadRecostMove, at);
}

/* --- one movement ------------------------------------------------------------ */

static void
take_in (SteadRecostMove *move)
{
  move->pool->now += move->quantity;
  move->pool->now_cents += move->cents;
}

static void
take_out (SteadRecostMove *move)
{
  SteadRecostPool *pool = move->pool;
  double quantity = -move->quantity;
  gboolean last = quantity > pool->now - STEAD_AMOUNT_EPSILON;
  gint64 cents = last ? pool->now_cents
                      : stead_money_round ((double) pool->now_cents * quantity / pool->now);

  move->cents = -cents;
  pool->now = ABS (pool->now - quantity) < STEAD_AMOUNT_EPSILON ? 0 : pool->now - quantity;
  pool->now_cents -= cents;
}

/* --- kitchen batches ----------------------------------------------------------- */

static gint64
used_cents (Run                    *run,
            const SteadRecostBatch *batch)
{
  gint64 sum = 0;

  for (guint i = 0; i < batch->used->len; i++)
    {
      const SteadRecostPart *part = &g_array_index (batch->used, SteadRecostPart, i);

      sum -= part->at == G_MAXUINT ? part->cents : move_at (run, part->at)->cents;
    }
  return sum;
}

/* One that made something on a closed day keeps the cost of all that it made. */
static gboolean
is_open (const SteadRecostBatch *batch)
{
  for (guint i = 0; i < batch->made->len; i++)
    if (g_array_index (batch->made, SteadRecostPart, i).at == G_MAXUINT)
      return FALSE;
  return batch->made->len > 0;
}

static void
share_out (Run              *run,
           SteadRecostBatch *batch)
{
  guint n = batch->made->len;
  g_autofree double *weights = NULL;
  g_autofree gint64 *shares = NULL;

  if (!is_open (batch))
    return;
  weights = g_new (double, n);
  shares = g_new (gint64, n);
  for (guint i = 0; i < n; i++)
    weights[i] = g_array_index (batch->made, SteadRecostPart, i).quantity;
  batch->total = used_cents (run, batch);
  stead_money_split (batch->total, weights, n, shares);
  for (guint i = 0; i < n; i++)
    move_at (run, g_array_index (batch->made, SteadRecostPart, i).at)->cents = shares[i];
}

static gboolean
is_on (Run                   *run,
       const SteadRecostPart *part,
       SteadDay               day)
{
  return part->at != G_MAXUINT && move_at (run, part->at)->day == day;
}

/* Is all there that @batch used on @day?  What it makes itself is not waited for. */
static gboolean
is_ready (Run                    *run,
          const SteadRecostBatch *batch,
          SteadDay                day,
          gboolean                wait)
{
  for (guint i = 0; i < batch->used->len; i++)
    {
      const SteadRecostPart *part = &g_array_index (batch->used, SteadRecostPart, i);
      SteadRecostPool *pool;
      guint own = 0;

      if (!is_on (run, part, day))
        continue;
      pool = move_at (run, part->at)->pool;
      if (-part->quantity > pool->now + STEAD_AMOUNT_EPSILON)
        return FALSE;
      for (guint j = 0; wait && j < batch->made->len; j++)
        {
          const SteadRecostPart *made = &g_array_index (batch->made, SteadRecostPart, j);

          own += is_on (run, made, day) && move_at (run, made->at)->pool == pool;
        }
      if (wait && pool->to_come > own)
        return FALSE;
    }
  return TRUE;
}

/* The first that is ready; in a circle, the first that has enough; in a damaged file, the first. */
static guint
next_maker (Run      *run,
            SteadDay  day)
{
  for (int wait = 1; wait >= 0; wait--)
    for (guint i = 0; i < run->makers->len; i++)
      if (is_ready (run, run->makers->pdata[i], day, wait != 0))
        return i;
  return 0;
}

static void
run_maker (Run              *run,
           SteadRecostBatch *batch,
           SteadDay          day)
{
  for (guint i = 0; i < batch->used->len; i++)
    {
      const SteadRecostPart *part = &g_array_index (batch->used, SteadRecostPart, i);

      if (is_on (run, part, day))
        take_out (move_at (run, part->at));
    }
  share_out (run, batch);
  for (guint i = 0; i < batch->made->len; i++)
    {
      const SteadRecostPart *part = &g_array_index (batch->made, SteadRecostPart, i);

      if (is_on (run, part, day))
        {
          take_in (move_at (run, part->at));
          move_at (run, part->at)->pool->to_come--;
        }
    }
}

/* --- one day ------------------------------------------------------------------- */

static SteadRecostBatch *
batch_of (Run                   *run,
          const SteadRecostMove *move)
{
  return move->batch_id != 0 ? g_hash_table_lookup (run->batches, &move->batch_id) : NULL;
}

static gboolean
makes_on (Run              *run,
          SteadRecostBatch *batch,
          SteadDay          day)
{
  for (guint i = 0; batch != NULL && i < batch->made->len; i++)
    if (is_on (run, &g_array_index (batch->made, SteadRecostPart, i), day))
      return TRUE;
  return FALSE;
}

static void
add_maker (Run              *run,
           SteadRecostMove  *move,
           SteadRecostBatch *batch)
{
  move->pool->to_come++;
  if (!g_ptr_array_find (run->makers, batch, NULL))
    g_ptr_array_add (run->makers, batch);
}

static void
run_day (Run   *run,
         guint  first,
         guint  end)
{
  SteadDay day = move_at (run, first)->day;

  for (guint i = first; i < end; i++)
    {
      SteadRecostMove *move = move_at (run, i);
      SteadRecostBatch *batch = move->is_made ? batch_of (run, move) : NULL;

      if (batch != NULL)
        add_maker (run, move, batch);
      else if (move->quantity > 0)
        take_in (move);
    }
  while (run->makers->len > 0)
    {
      guint at = next_maker (run, day);

      run_maker (run, run->makers->pdata[at], day);
      g_ptr_array_remove_index (run->makers, at);
    }
  for (guint i = first; i < end; i++)
    {
      SteadRecostMove *move = move_at (run, i);

      if (move->quantity < 0 && !makes_on (run, batch_of (run, move), day))
        take_out (move);
    }
}

/* --- all ------------------------------------------------------------------------ */

static void
run_all (Run *run)
{
  guint first = 0;

  for (guint i = 0; i < run->moves->len; i++)
    {
      SteadRecostPool *pool = move_at (run, i)->pool;

      pool->now = pool->base;
      pool->now_cents = pool->cents;
      pool->to_come = 0;
    }
  while (first < run->moves->len)
    {
      guint end = first + 1;

      while (end < run->moves->len && move_at (run, end)->day == move_at (run, first)->day)
        end++;
      run_day (run, first, end);
      first = end;
    }
}

/* Does all that was made carry what was used, whenever that was? */
static gboolean
is_settled (Run *run)
{
  GHashTableIter iter;
  gpointer batch;

  g_hash_table_iter_init (&iter, run->batches);
  while (g_hash_table_iter_next (&iter, NULL, &batch))
    if (is_open (batch) && ((SteadRecostBatch *) batch)->total != used_cents (run, batch))
      return FALSE;
  return TRUE;
}

void
stead_recost_run (GArray     *moves,
                  GHashTable *batches)
{
  g_autoptr(GPtrArray) makers = g_ptr_array_new ();
  Run run = { moves, batches, makers };
  int rounds = 0;

  do
    run_all (&run);
  while (!is_settled (&run) && ++rounds < MOST_ROUNDS);
}
