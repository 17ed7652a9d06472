/* stead-season-paper.c - the school year so far on one or two pages. */
#include "config.h"

#include "answer/stead-build-answer.h"
#include "answer/stead-season-answer.h"
#include "answer/stead-workbook-answer.h"
#include "core/stead-money.h"
#include "paper/stead-month-figure.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MINUTES_AN_HOUR 60

typedef struct
{
  SteadStore *store;
  SteadFarm  *farm;
  GPtrArray  *months;     /* of SteadMonth */
  SteadMonth  sum;
  SteadDay    from, to;
} Season;

/* --- a chart ------------------------------------------------------------------- */

typedef double (*ValueFunc) (const Season *season, const SteadMonth *month);

static double
eggs_of (const Season     *season,
         const SteadMonth *month)
{
  return (double) month->eggs;
}

static const SteadUnit *
weight_unit (const Season *season)
{
  return stead_unit_by_id (season->farm->units == STEAD_UNITS_US ? "lb" : "kg");
}

static double
fish_of (const Season     *season,
         const SteadMonth *month)
{
  return stead_quantity_from_base (month->fish_kg, weight_unit (season));
}

static double
crop_of (const Season     *season,
         const SteadMonth *month)
{
  return stead_quantity_from_base (month->crop_kg, weight_unit (season));
}

static double
jars_of (const Season     *season,
         const SteadMonth *month)
{
  return month->jars;
}

static double
in_of (const Season     *season,
       const SteadMonth *month)
{
  return (double) month->in_cents;
}

static double
out_of (const Season     *season,
        const SteadMonth *month)
{
  return (double) month->out_cents;
}

static void
add_chart (SteadPages   *pages,
           const Season *season,
           ValueFunc     value,
           ValueFunc     other,
           SteadRole     role,
           SteadPattern  pattern)
{
  guint n = season->months->len;
  g_autofree const char **names = g_new (const char *, n);
  g_autofree double *values = g_new (double, n), *others = g_new (double, n);
  const SteadMonthSeries series = { .n = (int) n, .names = names, .values = values, .others = other != NULL ? others : NULL,
                                    .role = role, .pattern = pattern, .other_role = STEAD_ROLE_TOMATO,
                                    .other_pattern = STEAD_PATTERN_RISING, .money = other != NULL };

  for (guint i = 0; i < n; i++)
    {
      const SteadMonth *month = season->months->pdata[i];

      names[i] = stead_month_short (month->month);
      values[i] = value (season, month);
      others[i] = other != NULL ? other (season, month) : 0;
    }
  stead_month_figure_add (pages, &series, season->farm->currency);
}

/* --- what it says ---------------------------------------------------------------- */

static void
add_up (Season *season)
{
  for (guint i = 0; i < season->months->len; i++)
    {
      const SteadMonth *month = season->months->pdata[i];

      season->sum.eggs += month->eggs;
      season->sum.fish_kg += month->fish_kg;
      season->sum.crop_kg += month->crop_kg;
      season->sum.jars += month->jars;
      season->sum.in_cents += month->in_cents;
      season->sum.out_cents += month->out_cents;
      season->sum.minutes += month->minutes;
    }
}

static char *
weight_text (const Season *season,
             double        kg)
{
  return stead_quantity_format (kg, weight_unit (season));
}

/* A heading, its sentence and its chart; nothing recorded is said, not dropped. */
static void
add_part (SteadPages   *pages,
          const Season *season,
          const char   *heading,
          const char   *sentence,
          gboolean      filled,
          ValueFunc     value,
          SteadRole     role,
          SteadPattern  pattern)
{
  stead_pages_add_heading (pages, heading);
  if (!filled)
    {
      stead_pages_add_text (pages, _("Nothing recorded."));
      return;
    }
  stead_pages_add_text (pages, sentence);
  stead_pages_keep_last (pages);
  add_chart (pages, season, value, NULL, role, pattern);
}

static void
add_production (SteadPages   *pages,
                const Season *season)
{
  const SteadMonth *sum = &season->sum;
  g_autofree char *eggs_n = stead_words_eggs (sum->eggs);
  g_autofree char *fish_n = weight_text (season, sum->fish_kg);
  g_autofree char *crop_n = weight_text (season, sum->crop_kg);
  g_autofree char *eggs = g_strdup_printf (_("<b>%s</b> collected, by month."), eggs_n);
  g_autofree char *fish = g_strdup_printf (_("<b>%s</b> of fish harvested, by month."), fish_n);
  g_autofree char *crop = g_strdup_printf (_("<b>%s</b> picked, by month."), crop_n);
  g_autofree char *jars = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%d</b> jar or pack made, by month.",
                                                        "<b>%d</b> jars and packs made, by month.",
                                                        (gulong) llround (sum->jars)), (int) llround (sum->jars));

  add_part (pages, season, _("Eggs"), eggs, sum->eggs > 0, eggs_of, STEAD_ROLE_EGG, STEAD_PATTERN_SOLID);
  add_part (pages, season, _("Fish"), fish, sum->fish_kg > 0, fish_of, STEAD_ROLE_FISH, STEAD_PATTERN_FALLING);
  add_part (pages, season, _("Tomatoes and other crops"), crop, sum->crop_kg > 0, crop_of, STEAD_ROLE_CROP,
            STEAD_PATTERN_DOTS);
  add_part (pages, season, _("Sauces and other jars"), jars, sum->jars >= 0.5, jars_of, STEAD_ROLE_SAUCE,
            STEAD_PATTERN_CROSS);
}

/* Those that are over, newest first, and their sum. */
static void
add_sale_days (SteadPages              *pages,
               const Season            *season,
               const SteadSeasonAnswer *sales)
{
  const SteadPagesColumn columns[] = {
    { C_("column of sales", "Day"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of sales", "Sale"), STEAD_ALIGN_LEFT, 2 },
    { C_("column of sales", "Taken"), STEAD_ALIGN_RIGHT, 0 },
  };
  g_autofree char *sum = stead_money_format (sales->takings_cents, season->farm->currency);

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < sales->days->len; i++)
    {
      const SteadSeasonDay *day = sales->days->pdata[i];
      g_autofree char *when = stead_day_format (day->sale->day, STEAD_DAY_STYLE_MEDIUM);
      g_autofree char *money = stead_money_format (day->takings_cents, season->farm->currency);

      if (day->stage == STEAD_SALE_DONE)
        stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { when, day->sale->name, money });
    }
  stead_pages_add_row (pages, STEAD_ROW_TOTAL, STEAD_PAGES_NO_KEY,
                       (const char *[]) { C_("last line of a table", "Together"), NULL, sum });
}

static gboolean
add_sales (SteadPages   *pages,
           const Season *season,
           GError      **error)
{
  g_autoptr(SteadSeasonAnswer) sales = stead_season_answer_between (season->store, season->from, season->to, error);

  if (sales == NULL)
    return FALSE;
  stead_pages_add_heading (pages, _("Sales"));
  if (sales->n_done == 0)
    {
      stead_pages_add_text (pages, _("Nothing recorded."));
      return TRUE;
    }
  stead_pages_add_text (pages, sales->sentence);
  stead_pages_keep_last (pages);
  add_sale_days (pages, season, sales);
  return TRUE;
}

static void
add_money (SteadPages   *pages,
           const Season *season)
{
  const SteadMonth *sum = &season->sum;
  const char *currency = season->farm->currency;
  g_autofree char *in = stead_money_format (sum->in_cents, currency);
  g_autofree char *out = stead_money_format (sum->out_cents, currency);
  g_autofree char *net = stead_money_format (sum->in_cents - sum->out_cents, currency);
  g_autofree char *hours = stead_number_format (sum->minutes / MINUTES_AN_HOUR, 1);
  g_autofree char *text = g_strdup_printf (_("<b>%s</b> came in and <b>%s</b> went out: %s in the end. Plain columns are "
                                             "money in, hatched ones money out."), in, out, net);
  g_autofree char *work = g_strdup_printf (_("<b>%s hours</b> of work were written down."), hours);

  stead_pages_add_heading (pages, _("Money"));
  stead_pages_add_text (pages, text);
  stead_pages_keep_last (pages);
  add_chart (pages, season, in_of, out_of, STEAD_ROLE_WATER, STEAD_PATTERN_SOLID);
  stead_pages_add_heading (pages, _("Work"));
  stead_pages_add_text (pages, sum->minutes > 0 ? work : _("Nothing recorded."));
}

static gboolean
add_builds (SteadPages   *pages,
            const Season *season,
            GError      **error)
{
  g_autoptr(GPtrArray) builds = stead_build_repo_list (season->store, error);

  if (builds == NULL)
    return FALSE;
  stead_pages_add_heading (pages, _("Builds"));
  if (builds->len == 0)
    stead_pages_add_text (pages, _("Nothing recorded."));
  for (guint i = 0; i < builds->len; i++)
    {
      const SteadBuild *build = builds->pdata[i];
      g_autoptr(SteadBuildAnswer) answer = stead_build_answer_new (season->store, build->id, error);

      if (answer == NULL)
        return FALSE;
      stead_pages_add_subheading (pages, build->name);
      if (answer->sentence != NULL)
        stead_pages_add_text (pages, answer->sentence);
      if (answer->money_sentence != NULL)
        stead_pages_add_text (pages, answer->money_sentence);
    }
  return TRUE;
}

SteadPages *
stead_season_paper_new (SteadStore               *store,
                        const char               *of,
                        const SteadPaperOptions  *options,
                        GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadFarm) farm = imprint != NULL ? stead_farm_repo_get (store, error) : NULL;
  g_autoptr(GPtrArray) months = NULL;
  g_autoptr(SteadPages) pages = NULL;
  g_autofree char *first = NULL;
  g_autofree char *last = NULL;
  g_autofree char *period = NULL;
  SteadDay from, to = stead_store_get_today (store);
  Season season;

  if (farm == NULL || !stead_workbook_school_year (store, &from, error))
    return NULL;
  if (options != NULL && options->has_days)
    {
      from = options->from;
      to = options->to;
    }
  season = (Season) { .store = store, .farm = farm, .from = from, .to = to };
  months = season.months = stead_months_repo_list (store, from, to, error);
  if (months == NULL)
    return NULL;
  add_up (&season);
  first = stead_day_format (from, STEAD_DAY_STYLE_MEDIUM);
  last = stead_day_format (to, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: the first and the last day of a period. */
  period = g_strdup_printf (_("%s to %s"), first, last);
  pages = stead_pages_new (imprint, _("Season summary"), period);
  stead_pages_add_title (pages, _("Season summary"));
  add_production (pages, &season);
  if (!add_sales (pages, &season, error))
    return NULL;
  add_money (pages, &season);
  if (!add_builds (pages, &season, error))
    return NULL;
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}
