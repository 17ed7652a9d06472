/* stead-packet-production.c - the section of a packet about batches that people worked at. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-packet-private.h"
#include "core/stead-calendar.h"
#include "core/stead-quantity.h"
#include "store/stead-batch-repo.h"

/* --- production --------------------------------------------------------------------------- */

/* Names of others stand only where the packet says so and they agreed. */
static gboolean
add_mates (SteadPacketMaking  *making,
           gint64              batch_id,
           gint64              person_id,
           GError            **error)
{
  int others = 0;
  g_autoptr(GPtrArray) names = stead_packet_repo_mates (making->store, batch_id, person_id, &others, error);
  g_autofree char *list = NULL;

  if (names == NULL)
    return FALSE;
  if (others == 0)
    return TRUE;
  if (!making->answer->packet->with_names || names->len == 0)
    {
      stead_packet_add_text (making, STEAD_BLOCK_NOTE,
                             g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Shared with %d other person.",
                                                           "Shared with %d other people.", (gulong) others), others));
      return TRUE;
    }
  g_ptr_array_add (names, NULL);
  list = g_strjoinv (C_("between items of a list", ", "), (char **) names->pdata);
  if ((guint) others == names->len - 1)
    stead_packet_add_text (making, STEAD_BLOCK_NOTE, g_strdup_printf (_("Shared with %s."), list));
  else
    stead_packet_add_text (making, STEAD_BLOCK_NOTE,
                           g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Shared with %2$s and %1$d other person.",
                                                         "Shared with %2$s and %1$d other people.",
                                                         (gulong) others - names->len + 1),
                                            others - (int) names->len + 1, list));
  return TRUE;
}

static gboolean
add_batch (SteadPacketMaking  *making,
           gint64              batch_id,
           GError            **error)
{
  const SteadBatchAnswer *batch = stead_packet_batch (making, batch_id, error);
  SteadPacketFigure *figure;
  SteadCardTable *table;
  const char *name;

  if (batch == NULL)
    return FALSE;
  name = batch->money.batch->name;
  figure = stead_packet_add_figure (making, g_strdup (name));
  stead_packet_add_entry (figure, g_strdup (name), STEAD_TARGET_BATCH, batch_id);
  stead_packet_add_text (making, STEAD_BLOCK_SUBHEADING, stead_packet_marked (name, figure));
  stead_packet_add_text (making, STEAD_BLOCK_TEXT, g_strdup (batch->sentence));
  if (!add_mates (making, batch_id, stead_packet_person_id (making, 0), error))
    return FALSE;
  if (batch->rows->len > 0)
    {
      table = stead_packet_add_table (making, 1, "", C_("column of a plan", "Planned"),
                                      batch->is_over ? C_("column of a plan", "Came") : C_("column of a plan", "So far"),
                                      stead_batch_answer_end_title (batch), NULL);
      for (guint i = 0; i < batch->rows->len; i++)
        {
          const SteadBatchRow *row = batch->rows->pdata[i];
          char *what = stead_packet_batch_line (making, batch, row, error);

          if (what == NULL)
            return FALSE;
          stead_packet_add_row (table, what, g_strdup (row->planned), g_strdup (row->actual),
                                g_strdup (row->end));
        }
    }
  return TRUE;
}

/* What went into a batch of the kitchen. */
static gboolean
add_used (SteadPacketMaking  *making,
          SteadPacketFigure  *figure,
          gint64              batch_id,
          GError            **error)
{
  g_autoptr(GPtrArray) moves = stead_lot_repo_batch_moves (making->store, batch_id, error);

  for (guint i = 0; moves != NULL && i < moves->len; i++)
    {
      const SteadMove *move = moves->pdata[i];
      SteadStatementEntry entry = { move->day, STEAD_FACT_MOVEMENT, move->id, -move->cost_cents };

      stead_packet_add_posting (making, figure, &entry);
    }
  return moves != NULL;
}

/* Batches of the kitchen are many and short: a row each. */
static gboolean
add_kitchen (SteadPacketMaking  *making,
             gint64              batch_id,
             SteadCardTable    **table,
             GError            **error)
{
  const SteadKitchenAnswer *kitchen = stead_packet_kitchen (making, batch_id, error);
  const SteadKitchen *batch;
  SteadPacketFigure *figure;

  if (kitchen == NULL)
    return FALSE;
  batch = kitchen->kitchen;
  if (*table == NULL)
    {
      stead_packet_add_text (making, STEAD_BLOCK_SUBHEADING, g_strdup (_("In the kitchen")));
      *table = stead_packet_add_table (making, 1, C_("column of a kitchen", "Batch"), C_("column of a kitchen", "Planned"),
                                       C_("column of a kitchen", "Came"), C_("column of a kitchen", "What went in"), NULL);
    }
  figure = stead_packet_add_figure (making, g_strdup (batch->batch.name));
  stead_packet_add_entry (figure, g_strdup (batch->batch.name), STEAD_TARGET_KITCHEN, batch_id);
  if (!add_used (making, figure, batch_id, error))
    return FALSE;
  stead_packet_add_row (*table, stead_packet_marked (batch->batch.name, figure),
                        stead_quantity_format (batch->wanted_base, batch->item_unit),
                        kitchen->harvest != NULL
                        ? stead_quantity_format (kitchen->harvest->quantity_base, batch->item_unit) : NULL,
                        kitchen->used_cents > 0 ? stead_packet_money (making, kitchen->used_cents) : NULL);
  return TRUE;
}

/* -1 with @error */
static int
kind_of (SteadPacketMaking  *making,
         gint64              batch_id,
         GError            **error)
{
  g_autoptr(SteadBatch) batch = stead_batch_repo_get (making->store, batch_id, error);

  return batch != NULL ? (int) batch->kind : -1;
}

/* --- what the farm gave, by month ----------------------------------------------------------- */

static double
value_of (const SteadMonth *month,
          SteadBatchKind    kind,
          const SteadUnit  *unit)
{
  switch (kind)
    {
    case STEAD_BATCH_FLOCK:   return (double) month->eggs;
    case STEAD_BATCH_FISH:    return stead_quantity_from_base (month->fish_kg, unit);
    case STEAD_BATCH_CROP:    return stead_quantity_from_base (month->crop_kg, unit);
    case STEAD_BATCH_KITCHEN:
    default:                  return month->jars;
    }
}

static char *
say_months (const SteadPacketMaking *making,
            SteadBatchKind           kind,
            double                   sum)
{
  gboolean us = making->answer->farm->units == STEAD_UNITS_US;
  g_autofree char *amount = stead_number_format (sum, kind == STEAD_BATCH_FLOCK || kind == STEAD_BATCH_KITCHEN ? 0 : 1);

  switch (kind)
    {
    case STEAD_BATCH_FLOCK:
      return g_strdup_printf (_("Eggs of the whole farm, by month: %s in all."), amount);
    case STEAD_BATCH_FISH:
      return us ? g_strdup_printf (_("Fish of the whole farm in pounds, by month: %s in all."), amount)
                : g_strdup_printf (_("Fish of the whole farm in kilograms, by month: %s in all."), amount);
    case STEAD_BATCH_CROP:
      return us ? g_strdup_printf (_("Crops of the whole farm in pounds, by month: %s in all."), amount)
                : g_strdup_printf (_("Crops of the whole farm in kilograms, by month: %s in all."), amount);
    case STEAD_BATCH_KITCHEN:
    default:
      return g_strdup_printf (_("Jars and packs of the kitchen, by month: %s in all."), amount);
    }
}

/* The batches that a chart of the whole farm sums up. */
static gboolean
add_givers (SteadPacketMaking  *making,
            SteadPacketFigure  *figure,
            SteadBatchKind      kind,
            GError            **error)
{
  g_autoptr(GPtrArray) batches = stead_batch_repo_list (making->store, TRUE, error);
  const SteadPacket *packet = making->answer->packet;

  for (guint i = 0; batches != NULL && i < batches->len; i++)
    {
      const SteadBatch *batch = batches->pdata[i];

      if (batch->kind == kind && batch->started_on <= packet->to_on
          && (batch->ended_on == STEAD_DAY_NONE || batch->ended_on >= packet->from_on))
        stead_packet_add_entry (figure, g_strdup (batch->name),
                                kind == STEAD_BATCH_KITCHEN ? STEAD_TARGET_KITCHEN : STEAD_TARGET_BATCH, batch->id);
    }
  return batches != NULL;
}

/* A chart says something once there is more than one month with anything in it. */
static gboolean
add_months (SteadPacketMaking  *making,
            const GPtrArray    *months,
            SteadBatchKind      kind,
            GError            **error)
{
  const SteadUnit *unit = stead_unit_by_id (making->answer->farm->units == STEAD_UNITS_US ? "lb" : "kg");
  g_autofree char *text = NULL;
  SteadPacketFigure *figure;
  SteadPacketMonths *chart;
  double sum = 0;
  int filled = 0;

  for (guint i = 0; i < months->len; i++)
    {
      double value = value_of (months->pdata[i], kind, unit);

      filled += value > 0;
      sum += value;
    }
  if (filled < 2)
    return TRUE;
  chart = g_new0 (SteadPacketMonths, 1);
  chart->kind = kind;
  chart->names = g_ptr_array_new_with_free_func (g_free);
  chart->values = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint i = 0; i < months->len; i++)
    {
      const SteadMonth *month = months->pdata[i];
      double value = value_of (month, kind, unit);

      g_ptr_array_add (chart->names, g_strdup (stead_month_short (month->month)));
      g_array_append_val (chart->values, value);
    }
  text = say_months (making, kind, sum);
  figure = stead_packet_add_figure (making, g_strdup (text));
  stead_packet_add_months (making, chart, stead_packet_marked (text, figure));
  return add_givers (making, figure, kind, error);
}

/* One chart for each kind of batch that the packet tells of. */
static gboolean
add_charts (SteadPacketMaking  *making,
            const GArray       *batches,
            GError            **error)
{
  const GPtrArray *months = stead_packet_months (making, error);
  gboolean has_kind[STEAD_BATCH_KITCHEN + 1] = { FALSE };

  if (months == NULL)
    return FALSE;
  for (guint i = 0; i < batches->len; i++)
    {
      int kind = kind_of (making, g_array_index (batches, gint64, i), error);

      if (kind < 0)
        return FALSE;
      has_kind[kind] = TRUE;
    }
  for (int kind = 0; kind <= STEAD_BATCH_KITCHEN; kind++)
    if (has_kind[kind] && !add_months (making, months, (SteadBatchKind) kind, error))
      return FALSE;
  return TRUE;
}

/* The kitchen comes last. */
static gboolean
add_batches (SteadPacketMaking  *making,
             const GArray       *batches,
             GError            **error)
{
  SteadCardTable *table = NULL;

  for (int kitchen = 0; kitchen <= 1; kitchen++)
    for (guint i = 0; i < batches->len; i++)
      {
        gint64 id = g_array_index (batches, gint64, i);
        int kind = kind_of (making, id, error);

        if (kind < 0)
          return FALSE;
        if ((kind == STEAD_BATCH_KITCHEN) == kitchen &&
            !(kitchen ? add_kitchen (making, id, &table, error) : add_batch (making, id, error)))
          return FALSE;
      }
  return TRUE;
}

gboolean
stead_packet_make_production (SteadPacketMaking  *making,
                              GError            **error)
{
  g_autoptr(GArray) batches = stead_packet_ids_of_all (making, stead_packet_repo_batches, error);

  if (batches == NULL || !add_charts (making, batches, error))
    return FALSE;
  if (!add_batches (making, batches, error))
    return FALSE;
  if (batches->len == 0)
    stead_packet_blank (making, g_strdup (_("Enter who did what in the log of a batch, or hours that belong to it.")),
                        STEAD_TARGET_HOURS, stead_packet_person_id (making, 0));
  return TRUE;
}
