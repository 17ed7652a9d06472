/* stead-packet-production.c - sections of a packet about batches and builds that people worked at. */
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
  if (batch->rows->len > 0)
    {
      table = stead_packet_add_table (making, 1, "", C_("column of a plan", "Planned"),
                                      batch->is_over ? C_("column of a plan", "Came") : C_("column of a plan", "So far"),
                                      stead_batch_answer_end_title (batch), NULL);
      for (guint i = 0; i < batch->rows->len; i++)
        {
          const SteadBatchRow *row = batch->rows->pdata[i];

          stead_packet_add_row (table, g_strdup (row->what), g_strdup (row->planned), g_strdup (row->actual),
                                g_strdup (row->end));
        }
    }
  return add_mates (making, batch_id, stead_packet_person_id (making, 0), error);
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

/* Ids of all people, each once; @read: as stead_packet_repo_batches() */
static GArray *
ids_of_all (SteadPacketMaking *making,
            GArray          *(*read) (SteadStore *, gint64, SteadDay, SteadDay, GError **),
            GError           **error)
{
  const SteadPacket *packet = making->answer->packet;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < making->answer->people->len; i++)
    {
      g_autoptr(GArray) ids = read (making->store, stead_packet_person_id (making, i), packet->from_on, packet->to_on,
                                    error);

      if (ids == NULL)
        return NULL;
      for (guint k = 0; k < ids->len; k++)
        {
          gint64 id = g_array_index (ids, gint64, k);
          gboolean known = FALSE;

          for (guint j = 0; j < all->len; j++)
            known = known || g_array_index (all, gint64, j) == id;
          if (!known)
            g_array_append_val (all, id);
        }
    }
  return g_steal_pointer (&all);
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

/* A chart says something once there is more than one month with anything in it. */
static void
add_months (SteadPacketMaking *making,
            const GPtrArray   *months,
            SteadBatchKind     kind)
{
  const SteadUnit *unit = stead_unit_by_id (making->answer->farm->units == STEAD_UNITS_US ? "lb" : "kg");
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
    return;
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
  stead_packet_add_months (making, chart, say_months (making, kind, sum));
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
    if (has_kind[kind])
      add_months (making, months, (SteadBatchKind) kind);
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
  g_autoptr(GArray) batches = ids_of_all (making, stead_packet_repo_batches, error);

  if (batches == NULL || !add_charts (making, batches, error))
    return FALSE;
  if (!add_batches (making, batches, error))
    return FALSE;
  if (batches->len == 0)
    stead_packet_blank (making, g_strdup (_("Enter who did what in the log of a batch, or hours that belong to it.")),
                        STEAD_TARGET_HOURS, stead_packet_person_id (making, 0));
  return TRUE;
}

/* --- builds --------------------------------------------------------------------------------- */

/* What stands between a plan and the first hole. */
static void
add_permits (SteadPacketMaking *making,
             const SteadBuild  *build)
{
  if (build->called_on != STEAD_DAY_NONE)
    {
      g_autofree char *day = stead_day_format (build->called_on, STEAD_DAY_STYLE_SHORT);

      stead_packet_add_text (making, STEAD_BLOCK_TEXT,
                             g_strdup_printf (_("Before digging, the notice about buried lines was given on %s."), day));
    }
  if (build->permit_on != STEAD_DAY_NONE)
    {
      g_autofree char *day = stead_day_format (build->permit_on, STEAD_DAY_STYLE_SHORT);

      stead_packet_add_text (making, STEAD_BLOCK_TEXT,
                             g_strdup_printf (_("The building office answered on %s."), day));
    }
}

static gboolean
add_build (SteadPacketMaking  *making,
           gint64              build_id,
           GError            **error)
{
  const SteadBuildAnswer *build = stead_packet_build (making, build_id, error);
  SteadPacketFigure *figure;
  SteadCardTable *table;

  if (build == NULL)
    return FALSE;
  figure = stead_packet_add_figure (making, g_strdup (build->build->name));
  stead_packet_add_entry (figure, g_strdup (build->build->name), STEAD_TARGET_BUILD, build_id);
  stead_packet_add_text (making, STEAD_BLOCK_SUBHEADING, stead_packet_marked (build->build->name, figure));
  stead_packet_add_text (making, STEAD_BLOCK_TEXT, g_strdup (build->sentence));
  table = stead_packet_add_table (making, 1, C_("column of a build", "Material"), C_("column of a build", "Planned"),
                                  C_("column of a build", "Bought"), C_("column of a build", "Cost"), NULL);
  for (guint i = 0; i < build->rows->len; i++)
    {
      const SteadBuildRow *row = build->rows->pdata[i];

      if (row->left_out)
        continue;
      stead_packet_add_row (table, g_strdup (row->name), stead_build_row_amount (row, row->packs),
                            row->came > 0 ? stead_build_row_amount (row, row->came) : NULL,
                            row->cents > 0 ? stead_packet_money (making, row->cents)
                            : row->given ? g_strdup (C_("cost of a material", "given")) : NULL);
    }
  table = stead_packet_add_table (making, 1, C_("column of a build", "Task"), C_("column of a build", "Hours planned"),
                                  C_("column of a build", "Hours of all"), C_("column of a build", "Done"), NULL);
  for (guint i = 0; i < build->phases->len; i++)
    {
      const SteadBuildPhase *phase = build->phases->pdata[i];

      stead_packet_add_row (table, g_strdup (phase->name), stead_number_format (phase->hours, 1),
                            phase->worked_h > 0 ? stead_number_format (phase->worked_h, 1) : NULL,
                            phase->done_on != STEAD_DAY_NONE ? stead_day_format (phase->done_on, STEAD_DAY_STYLE_SHORT)
                                                             : NULL);
    }
  add_permits (making, build->build);
  for (guint i = 0; i < build->cautions->len; i++)
    stead_packet_add_text (making, STEAD_BLOCK_CAUTION, g_strdup (build->cautions->pdata[i]));
  return TRUE;
}

gboolean
stead_packet_make_build (SteadPacketMaking  *making,
                         GError            **error)
{
  g_autoptr(GArray) builds = ids_of_all (making, stead_packet_repo_builds, error);

  if (builds == NULL)
    return FALSE;
  for (guint i = 0; i < builds->len; i++)
    if (!add_build (making, g_array_index (builds, gint64, i), error))
      return FALSE;
  if (builds->len == 0)
    stead_packet_blank (making, g_strdup (_("Enter hours that belong to a build.")), STEAD_TARGET_HOURS,
                        stead_packet_person_id (making, 0));
  return TRUE;
}
