/* stead-packet-build.c - the section of a packet about builds that people worked at. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-packet-private.h"
#include "core/stead-calendar.h"

/* --- the bill ------------------------------------------------------------------------ */

/* What was paid leads to its line of the cash book; a gift, to the build. */
static void
add_bought (SteadPacketMaking      *making,
            SteadPacketFigure      *figure,
            const SteadBuildAnswer *build,
            const SteadBuildRow    *row,
            const SteadBuildBuy    *buy)
{
  g_autofree char *day = stead_day_format (buy->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *amount = stead_build_row_amount (row, buy->packs);
  g_autofree char *cents = stead_packet_money (making, buy->cents);
  SteadPacketEntry *entry;
  char *text;

  if (buy->cash_line_id == 0)
    /* Translators: a day, an amount, money. */
    text = g_strdup_printf (_("%1$s: %2$s given, worth %3$s"), day, amount, cents);
  else if (buy->supplier != NULL)
    /* Translators: a day, an amount, money, a supplier. */
    text = g_strdup_printf (_("%1$s: %2$s bought for %3$s from %4$s"), day, amount, cents, buy->supplier);
  else
    text = g_strdup_printf (_("%1$s: %2$s bought for %3$s"), day, amount, cents);
  entry = stead_packet_add_entry (figure, text, buy->cash_line_id == 0 ? STEAD_TARGET_BUILD : STEAD_TARGET_NONE,
                                  buy->cash_line_id == 0 ? build->build->id : 0);
  if (entry != NULL)
    entry->line_id = buy->cash_line_id;
}

/* (transfer full): the name with its mark */
static char *
marked_row (SteadPacketMaking      *making,
            const SteadBuildAnswer *build,
            const SteadBuildRow    *row)
{
  g_autofree char *planned = stead_build_row_amount (row, row->packs);
  g_autofree char *came = stead_build_row_amount (row, row->came);
  SteadPacketFigure *figure;

  figure = stead_packet_add_figure (making, row->came > 0
                                    /* Translators: a material; amounts. */
                                    ? g_strdup_printf (_("%1$s: %2$s planned, %3$s bought"), row->name, planned, came)
                                    : g_strdup_printf (_("%1$s: %2$s planned"), row->name, planned));
  for (guint i = 0; i < build->buys->len; i++)
    if (row->line_id != 0 && ((const SteadBuildBuy *) build->buys->pdata[i])->line_id == row->line_id)
      add_bought (making, figure, build, row, build->buys->pdata[i]);
  if (figure->n_entries == 0)
    stead_packet_add_entry (figure, row->how != NULL ? g_strdup (row->how) : g_strdup (build->build->name),
                            STEAD_TARGET_BUILD, build->build->id);
  return stead_packet_marked (row->name, figure);
}

static void
add_bill (SteadPacketMaking      *making,
          const SteadBuildAnswer *build)
{
  SteadCardTable *table = stead_packet_add_table (making, 1, C_("column of a build", "Material"),
                                                  C_("column of a build", "Planned"), C_("column of a build", "Bought"),
                                                  C_("column of a build", "Cost"), NULL);

  for (guint i = 0; i < build->rows->len; i++)
    {
      const SteadBuildRow *row = build->rows->pdata[i];

      if (row->left_out)
        continue;
      stead_packet_add_row (table, marked_row (making, build, row), stead_build_row_amount (row, row->packs),
                            row->came > 0 ? stead_build_row_amount (row, row->came) : NULL,
                            row->cents > 0 ? stead_packet_money (making, row->cents)
                            : row->given ? g_strdup (C_("cost of a material", "given")) : NULL);
    }
}

/* --- the work ------------------------------------------------------------------------ */

static void
add_tasks (SteadPacketMaking      *making,
           const SteadBuildAnswer *build)
{
  SteadCardTable *table = stead_packet_add_table (making, 1, C_("column of a build", "Task"),
                                                  C_("column of a build", "Hours planned"),
                                                  C_("column of a build", "Hours of all"), C_("column of a build", "Done"), NULL);

  for (guint i = 0; i < build->phases->len; i++)
    {
      const SteadBuildPhase *phase = build->phases->pdata[i];
      g_autofree char *planned = stead_number_format (phase->hours, 1);
      g_autofree char *worked = stead_number_format (phase->worked_h, 1);
      /* Translators: a task; hours. */
      SteadPacketFigure *figure = stead_packet_add_figure (making, g_strdup_printf (_("%1$s: %2$s hours planned, %3$s worked"),
                                                                                    phase->name, planned, worked));

      stead_packet_add_entry (figure, g_strdup (build->build->name), STEAD_TARGET_BUILD, build->build->id);
      stead_packet_add_row (table, stead_packet_marked (phase->name, figure), g_strdup (planned),
                            phase->worked_h > 0 ? g_strdup (worked) : NULL,
                            phase->done_on != STEAD_DAY_NONE ? stead_day_format (phase->done_on, STEAD_DAY_STYLE_SHORT)
                                                             : NULL);
    }
}

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

  if (build == NULL)
    return FALSE;
  figure = stead_packet_add_figure (making, g_strdup (build->build->name));
  stead_packet_add_entry (figure, g_strdup (build->build->name), STEAD_TARGET_BUILD, build_id);
  stead_packet_add_text (making, STEAD_BLOCK_SUBHEADING, stead_packet_marked (build->build->name, figure));
  stead_packet_add_text (making, STEAD_BLOCK_TEXT, g_strdup (build->sentence));
  add_bill (making, build);
  add_tasks (making, build);
  add_permits (making, build->build);
  for (guint i = 0; i < build->cautions->len; i++)
    stead_packet_add_text (making, STEAD_BLOCK_CAUTION, g_strdup (build->cautions->pdata[i]));
  return TRUE;
}

gboolean
stead_packet_make_build (SteadPacketMaking  *making,
                         GError            **error)
{
  g_autoptr(GArray) builds = stead_packet_ids_of_all (making, stead_packet_repo_builds, error);

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
