/* stead-cost-words.c - the cost answer's labels, sentence and caution. */
#include "config.h"

#include "answer/stead-cost-private.h"
#include "answer/stead-wait.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
packaging_label (const SteadCostFacts *facts)
{
  g_autoptr(GPtrArray) names = g_ptr_array_new ();

  for (guint i = 0; i < facts->packs->len; i++)
    g_ptr_array_add (names, ((const SteadPackCost *) facts->packs->pdata[i])->item->name);
  if (names->len == 0)
    return g_strdup (_("Packaging"));
  g_ptr_array_add (names, NULL);
  return stead_words_list ((const char * const *) names->pdata);
}

static const char *
start_label (const SteadCostAnswer *answer)
{
  switch (stead_cost_batch_kind (answer))
    {
    case STEAD_BATCH_FISH: return C_("line of a cost sheet", "Fingerlings");
    case STEAD_BATCH_CROP: return C_("line of a cost sheet", "Seed and plants");
    case STEAD_BATCH_KITCHEN:
      return answer->kitchen->basis == STEAD_KITCHEN_STORE ? C_("line of a cost sheet", "Out of the store room")
                                                           : C_("line of a cost sheet", "Ingredients");
    case STEAD_BATCH_FLOCK:
    default:
      return answer->flock != NULL && answer->flock->reared
             ? C_("line of a cost sheet", "Raising the birds, spread over lay")
             : C_("line of a cost sheet", "Pullets, spread over lay");
    }
}

static char *
label_of (const SteadCostAnswer *answer,
          SteadCostKind          kind,
          const SteadCostFacts  *facts)
{
  switch (kind)
    {
    case STEAD_COST_FEED: return g_strdup (C_("line of a cost sheet", "Feed"));
    case STEAD_COST_START: return g_strdup (start_label (answer));
    case STEAD_COST_BEDDING: return g_strdup (C_("line of a cost sheet", "Bedding, litter"));
    case STEAD_COST_SUPPLIES: return g_strdup (C_("line of a cost sheet", "Other supplies"));
    case STEAD_COST_ASSETS:
      return g_strdup (answer->flock != NULL ? C_("line of a cost sheet", "Coop and equipment")
                                             : C_("line of a cost sheet", "Equipment"));
    case STEAD_COST_OVERHEAD: return g_strdup (C_("line of a cost sheet", "Overhead"));
    case STEAD_COST_PACKAGING: return packaging_label (facts);
    case STEAD_COST_LABOR: return g_strdup (C_("line of a cost sheet", "Student work, unpaid"));
    default: g_return_val_if_reached (NULL);
    }
}

/* The line that weighs most; the first of two that weigh the same. */
static SteadCostKind
largest_part (const SteadCostSheet *sheet)
{
  SteadCostKind largest = STEAD_COST_FEED;

  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    if (sheet->parts[kind].shown_cents > sheet->parts[largest].shown_cents)
      largest = kind;
  return largest;
}

static const char *
largest_start (const SteadCostAnswer *answer)
{
  switch (stead_cost_batch_kind (answer))
    {
    /* Translators: in each of these %s is money; keep the <b> around it. */
    case STEAD_BATCH_KITCHEN: return _("The largest part is the ingredients, <b>%s</b>.");
    case STEAD_BATCH_FISH: return _("The largest part is the fingerlings, <b>%s</b>.");
    case STEAD_BATCH_CROP: return _("The largest part is seed and plants, <b>%s</b>.");
    case STEAD_BATCH_FLOCK:
    default: return _("The largest part is the pullets, <b>%s</b>.");
    }
}

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
static char *
largest_sentence (const SteadCostAnswer *answer)
{
  SteadCostKind largest = largest_part (&answer->sheet);
  g_autofree char *share = stead_money_format (answer->sheet.parts[largest].shown_cents, answer->farm->currency);

  if (answer->sheet.parts[largest].shown_cents <= 0)
    return NULL;
  switch (largest)
    {
    case STEAD_COST_FEED:
      return g_strdup_printf (_("The largest part is feed, <b>%s</b>."), share);
    case STEAD_COST_START:
      return g_strdup_printf (largest_start (answer), share);
    case STEAD_COST_BEDDING:
      return g_strdup_printf (_("The largest part is the bedding, <b>%s</b>."), share);
    case STEAD_COST_SUPPLIES:
      return g_strdup_printf (_("The largest part is other supplies, <b>%s</b>."), share);
    case STEAD_COST_ASSETS:
      return g_strdup_printf (answer->flock != NULL ? _("The largest part is the coop and equipment, <b>%s</b>.")
                                                    : _("The largest part is the equipment, <b>%s</b>."), share);
    case STEAD_COST_OVERHEAD:
      return g_strdup_printf (_("The largest part is the overhead, <b>%s</b>."), share);
    case STEAD_COST_PACKAGING:
      return g_strdup_printf (_("The largest part is the packaging, <b>%s</b>."), share);
    case STEAD_COST_LABOR:
    default:
      g_return_val_if_reached (NULL);
    }
}
#pragma GCC diagnostic pop

static char *
sentence_of (const SteadCostAnswer *answer)
{
  const SteadCostSheet *sheet = &answer->sheet;
  const char *currency = answer->farm->currency;
  GString *text = g_string_new (NULL);
  g_autofree char *unit = stead_money_format (sheet->unit_cents, currency);
  /* Translators: "One dozen" and what it costs. */
  g_autofree char *first = g_strdup_printf (_("%s costs us <b>%s</b>."),
                                            stead_words_one_unit (answer->product->pack), unit);
  g_autofree char *largest = largest_sentence (answer);

  stead_words_add (text, first);
  stead_words_add (text, largest);
  if (sheet->parts[STEAD_COST_LABOR].shown_cents > 0)
    {
      g_autofree char *rate = stead_money_format (answer->farm->labor_cents_hour, currency);
      g_autofree char *with = stead_money_format (sheet->unit_labor_cents, currency);
      g_autofree char *labor = g_strdup_printf (_("With student work at %s an hour it is <b>%s</b>."), rate, with);

      stead_words_add (text, labor);
    }
  if (answer->money != NULL)
    {
      g_autofree char *money = stead_cost_money_sentence (answer);

      stead_words_add (text, money);
    }
  if (answer->kitchen != NULL)
    {
      g_autofree char *kitchen = stead_cost_kitchen_sentence (answer);

      stead_words_add (text, kitchen);
    }
  return stead_words_end (text);
}

/* Feed and other things that no receipt covers. */
static void
caution_uses (const SteadCostAnswer *answer,
              GString               *text)
{
  gboolean fed = FALSE;

  for (guint i = 0; i < answer->uses->len; i++)
    {
      const SteadUse *use = answer->uses->pdata[i];
      g_autofree char *amount = stead_quantity_format (use->uncovered_base, use->unit);
      g_autofree char *sentence = NULL;

      fed = fed || use->kind == STEAD_ITEM_FEED;
      if (!(use->uncovered_base > 1e-6))
        continue;
      if (isfinite (use->uncovered_cents))
        sentence = g_strdup_printf (_("%s of %s has no receipt yet and counts at the nearest known price. "
                                      "Enter the receipt in Keep."), amount, use->item_name);
      else
        sentence = g_strdup_printf (_("%s of %s is left out, since no price is known. "
                                      "Enter its receipt in Keep."), amount, use->item_name);
      stead_words_add (text, sentence);
    }
  if (answer->kitchen != NULL)
    return;
  if (!fed && answer->batch->feed_item_id == 0 && answer->batch->kind != STEAD_BATCH_CROP)
    stead_words_add (text, _("Which feed they get is not said, so the cost leaves feed out. Choose it in Raise."));
  else if (!fed && answer->flock != NULL)
    stead_words_add (text, _("No feed is in the log of these days, so the cost leaves feed out. "
                             "Enter in Raise what the birds eat."));
  else if (!fed && answer->batch->kind == STEAD_BATCH_FISH)
    stead_words_add (text, _("No feed is in the log so far. Enter in Raise what the fish eat."));
}

static void
caution_packs (const SteadCostFacts *facts,
               GString              *text)
{
  for (guint i = 0; i < facts->packs->len; i++)
    {
      const SteadPackCost *pack = facts->packs->pdata[i];
      g_autofree char *sentence = NULL;

      if (isfinite (pack->unit_cents))
        continue;
      sentence = g_strdup_printf (_("No price is known for “%s”, so the cost leaves it out. "
                                    "Enter its receipt in Keep."), pack->item->name);
      stead_words_add (text, sentence);
    }
}

/* Days without eggs in the log make the cost look higher than it is. */
static void
caution_days (const SteadCostAnswer *answer,
              const SteadCostFacts  *facts,
              GString               *text)
{
  gint64 missing = facts->laying_days - answer->totals.days_logged;
  g_autofree char *logged = NULL;
  g_autofree char *days = NULL;
  g_autofree char *sentence = NULL;

  /* Today's eggs may still lie in the nest: one day is not worth a word. */
  if (missing <= MAX (1, facts->laying_days / 20))
    return;
  logged = stead_number_format ((double) answer->totals.days_logged, 0);
  days = stead_number_format (facts->laying_days, 0);
  sentence = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                           "Only %s of %s day has eggs in the log, so the cost looks too high. "
                                           "Enter the missing days in Raise.",
                                           "Only %s of %s days have eggs in the log, so the cost looks too high. "
                                           "Enter the missing days in Raise.",
                                           stead_words_plural (facts->laying_days)),
                              logged, days);
  stead_words_add (text, sentence);
}

static char *
caution_of (const SteadCostAnswer *answer,
            const SteadCostFacts  *facts)
{
  GString *text = g_string_new (NULL);
  g_autofree char *wait = answer->batch != NULL
                          ? stead_wait_batch_caution (answer->batch->name, answer->wait_until) : NULL;

  stead_words_add (text, wait);
  if (answer->overhead.base == STEAD_OVERHEAD_SPACE && !(answer->overhead_used > 0))
    stead_words_add (text, _("Overhead goes by space, and no space of this is written down, so it bears none."));
  caution_uses (answer, text);
  caution_packs (facts, text);
  if (answer->flock != NULL)
    caution_days (answer, facts, text);
  else if (answer->money != NULL)
    stead_cost_money_caution (answer, text);
  return stead_words_end (text);
}

void
stead_cost_answer_put_in_words (SteadCostAnswer      *answer,
                                const SteadCostFacts *facts)
{
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    {
      answer->labels[kind] = label_of (answer, kind, facts);
      if (answer->sheet.parts[kind].total_cents > 0)
        answer->whys[kind] = stead_cost_why (answer, facts, kind);
    }
  answer->total_why = stead_cost_total_why (answer);
  answer->sentence = sentence_of (answer);
  answer->caution = caution_of (answer, facts);
}
