/* stead-coins.c - bills and coins: counting a drawer, and giving change from it. */
#include "config.h"

#include "core/stead-coins.h"
#include "core/stead-core-error.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* A coin of the greatest worth that anybody counts. */
#define HIGHEST_FACE 10000000

/* No pieces make this sum. */
#define NEVER G_MAXUINT32

const gint64 *
stead_coins_faces (const char *currency,
                   gsize      *out_n)
{
  static const gint64 dollars[] = { 10000, 5000, 2000, 1000, 500, 100, 25, 10, 5, 1 };
  static const gint64 euros[] = { 20000, 10000, 5000, 2000, 1000, 500, 200, 100, 50, 20, 10, 5, 2, 1 };

  g_return_val_if_fail (currency != NULL && out_n != NULL, NULL);

  if (g_str_equal (currency, "USD"))
    {
      *out_n = G_N_ELEMENTS (dollars);
      return dollars;
    }
  if (g_str_equal (currency, "EUR"))
    {
      *out_n = G_N_ELEMENTS (euros);
      return euros;
    }
  *out_n = 0;
  return NULL;
}

gint64
stead_coins_sum (const gint64 *faces,
                 const gint64 *pieces,
                 gsize         n)
{
  gint64 sum = 0;

  g_return_val_if_fail ((faces != NULL && pieces != NULL) || n == 0, -1);
  g_return_val_if_fail (n <= STEAD_COINS_MOST_FACES, -1);

  for (gsize i = 0; i < n; i++)
    {
      if (faces[i] <= 0 || faces[i] > HIGHEST_FACE || pieces[i] < 0 || pieces[i] > STEAD_COINS_MOST_PIECES)
        return -1;
      sum += faces[i] * pieces[i];
    }
  return sum;
}

/* Fewest pieces for each sum with one more face, of which there are @limit: the sums of
 * one rest modulo the face are walked upward, and of the last @limit + 1 of them the
 * cheapest is kept at the head of a queue. */
static void
add_face (gint64   face,
          gint64   limit,
          gint64   amount,
          guint32 *fewest,
          guint16 *used,
          gint64  *queue,
          gint64  *queue_cost)
{
  for (gint64 rest = 0; rest < face && rest <= amount; rest++)
    {
      gint64 head = 0, tail = 0;

      for (gint64 k = 0; rest + k * face <= amount; k++)
        {
          gint64 sum = rest + k * face;

          if (fewest[sum] != NEVER)
            {
              gint64 cost = (gint64) fewest[sum] - k;

              while (tail > head && queue_cost[tail - 1] >= cost)
                tail--;
              queue[tail] = k;
              queue_cost[tail++] = cost;
            }
          while (tail > head && queue[head] < k - limit)
            head++;
          if (tail == head)
            continue;
          used[sum] = (guint16) (k - queue[head]);
          fewest[sum] = (guint32) (queue_cost[head] + k);
        }
    }
}

static gboolean
find_change (gint64        amount,
             const gint64 *faces,
             const gint64 *drawer,
             gsize         n,
             gint64       *pieces)
{
  gsize sums = (gsize) amount + 1;
  g_autofree guint32 *fewest = g_new (guint32, sums);
  g_autofree guint16 *used = g_new0 (guint16, sums * n + 1);
  g_autofree gint64 *queue = g_new (gint64, sums);
  g_autofree gint64 *queue_cost = g_new (gint64, sums);
  gint64 left = amount;

  for (gsize i = 0; i < sums; i++)
    fewest[i] = i == 0 ? 0 : NEVER;
  for (gsize f = 0; f < n; f++)
    {
      /* More than the sum itself holds are never needed. */
      gint64 most = amount / faces[f];

      if (drawer != NULL)
        most = MIN (most, drawer[f]);
      most = MIN (most, G_MAXUINT16);
      add_face (faces[f], most, amount, fewest, used + f * sums, queue, queue_cost);
    }
  if (fewest[amount] == NEVER)
    return FALSE;
  for (gsize f = n; f-- > 0;)
    {
      pieces[f] = used[f * sums + (gsize) left];
      left -= pieces[f] * faces[f];
    }
  return left == 0;
}

gboolean
stead_coins_change (gint64         amount,
                    const gint64  *faces,
                    const gint64  *drawer,
                    gsize          n,
                    gint64        *out_pieces,
                    GError       **error)
{
  gint64 pieces[STEAD_COINS_MOST_FACES] = { 0 };

  g_return_val_if_fail (faces != NULL && out_pieces != NULL, FALSE);
  g_return_val_if_fail (n > 0 && n <= STEAD_COINS_MOST_FACES, FALSE);
  for (gsize i = 0; i < n; i++)
    g_return_val_if_fail (faces[i] > 0 && faces[i] <= HIGHEST_FACE, FALSE);

  if (amount < 0 || amount > STEAD_COINS_MOST_CHANGE)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("Change is given from 0 up to a thousand. Check what was paid."));
      return FALSE;
    }
  for (gsize i = 0; drawer != NULL && i < n; i++)
    if (drawer[i] < 0)
      {
        g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                             _("A drawer cannot hold fewer than no pieces. Count it again."));
        return FALSE;
      }
  if (!find_change (amount, faces, drawer, n, pieces))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("The drawer cannot give this change. Ask for a smaller bill, or for coins."));
      return FALSE;
    }
  memcpy (out_pieces, pieces, n * sizeof *pieces);
  return TRUE;
}
