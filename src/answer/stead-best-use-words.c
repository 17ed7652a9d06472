/* stead-best-use-words.c - "What is the best use of what is scarce?", in words. */
#include "config.h"

#include "answer/stead-best-use-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#define MINUTES_PER_HOUR 60.0

/* Less than a hundredth of a cent is worth nothing. */
#define WORTH 0.01

char *
stead_scarce_amount (const SteadScarce *scarce,
                     double             amount)
{
  g_autofree char *hours = NULL;

  switch (scarce->kind)
    {
    case STEAD_SCARCE_PACKS:
      return stead_words_units (scarce->pack, amount / scarce->base_per_pack);
    case STEAD_SCARCE_MINUTES:
      hours = stead_number_format (amount / MINUTES_PER_HOUR, 2);
      /* Translators: hours, short. */
      return g_strdup_printf (_("%s h"), hours);
    case STEAD_SCARCE_PLAIN:
    default:
      return stead_number_format (amount, 1);
    }
}

static char *
money (const SteadBestUse *self,
       double              cents)
{
  return stead_money_format (stead_money_round (cents), self->currency);
}

char *
stead_best_use_prices (const SteadBestUse     *self,
                       const SteadBestUseLine *line)
{
  g_autofree char *low = money (self, isfinite (line->price_low) ? MAX (0, line->price_low) : 0);
  g_autofree char *high = NULL;

  if (!self->solved)
    return g_strdup ("");
  if (!isfinite (line->price_high))
    /* Translators: prices of one at which the plan stays as it is. */
    return g_strdup_printf (_("from %s up"), low);
  high = money (self, line->price_high);
  if (!isfinite (line->price_low))
    /* Translators: prices of one at which the plan stays as it is. */
    return g_strdup_printf (_("up to %s"), high);
  /* Translators: prices of one at which the plan stays as it is: "$4.10 to $5.20". */
  return g_strdup_printf (C_("prices", "%s to %s"), low, high);
}

/* --- what clashes ----------------------------------------------------------------------------- */

static char *
join (GPtrArray *names)
{
  g_ptr_array_add (names, NULL);
  return stead_words_list ((const char * const *) names->pdata);
}

static GPtrArray *
clashing (const SteadBestUse *self)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadBestUseLine *line = line_at (self, i);
      g_autofree char *name = g_markup_escape_text (line->name, -1);
      g_autofree char *least = stead_words_units (line->pack, line->least);
      g_autofree char *most = stead_words_units (line->pack, line->most);

      if (line->least_clashes)
        /* Translators: a demand on the plan: "at least 60 dozen of “Eggs”". */
        g_ptr_array_add (names, g_strdup_printf (_("<b>at least %s of “%s”</b>"), least, name));
      if (line->most_clashes)
        /* Translators: a demand on the plan: "at most 40 dozen of “Eggs”". */
        g_ptr_array_add (names, g_strdup_printf (_("<b>at most %s of “%s”</b>"), most, name));
    }
  for (guint k = 0; k < self->scarce->len; k++)
    {
      g_autofree char *name = g_markup_escape_text (scarce_at (self, k)->name, -1);
      g_autofree char *amount = stead_scarce_amount (scarce_at (self, k), scarce_at (self, k)->amount);

      if (scarce_at (self, k)->clashes)
        /* Translators: a demand on the plan: "no more than 94 dozen of “Brown hens”". */
        g_ptr_array_add (names, g_strdup_printf (_("<b>no more than %s of “%s”</b>"), amount, name));
    }
  return names;
}

/* The one scarce thing that promises take too much of; NULL: it is not as simple. */
static const SteadScarce *
short_of (const SteadBestUse *self,
          double             *out_needed)
{
  const SteadScarce *only = NULL;
  guint at = 0;

  for (guint k = 0; k < self->scarce->len; k++)
    if (scarce_at (self, k)->clashes)
      {
        if (only != NULL)
          return NULL;
        only = scarce_at (self, k);
        at = k;
      }
  *out_needed = 0;
  for (guint i = 0; i < self->lines->len; i++)
    {
      if (line_at (self, i)->most_clashes)
        return NULL;
      if (line_at (self, i)->least_clashes)
        *out_needed += line_at (self, i)->least * stead_best_use_taken (self, i, at);
    }
  return only;
}

static char *
clash_sentence (const SteadBestUse *self)
{
  g_autoptr(GPtrArray) names = clashing (self);
  g_autofree char *list = join (names);
  GString *text = g_string_new (NULL);
  const SteadScarce *scarce;
  double needed;

  /* Translators: two or more demands, as a list. */
  g_string_append_printf (text, _("These cannot all be kept: %s."), list);
  scarce = short_of (self, &needed);
  if (scarce != NULL)
    {
      g_autofree char *need = stead_scarce_amount (scarce, needed);
      g_autofree char *lacking = stead_scarce_amount (scarce, needed - scarce->amount);
      g_autofree char *line = NULL;

      /* Translators: amounts of something scarce: needed, and missing. */
      line = g_strdup_printf (_("What is promised takes %s: %s more than there is."), need, lacking);
      g_string_append_printf (text, " %s", line);
    }
  return g_string_free (text, FALSE);
}

/* --- the sentence ------------------------------------------------------------------------------- */

static char *
sentence_of (const SteadBestUse *self)
{
  g_autofree char *best = money (self, self->best_cents), *plan = money (self, self->plan_cents);
  g_autofree char *more = money (self, self->best_cents - self->plan_cents);

  if (self->n_clashing > 0)
    return clash_sentence (self);
  if (!self->solved)
    return g_strdup (_("With these limits no best use can be worked out. Give each more than nothing."));
  if (!self->proven)
    return g_strdup_printf (_("The best use found so far brings <b>%s</b> after what is bought for it; the plan brings %s."),
                            best, plan);
  if (stead_money_round (self->best_cents - self->plan_cents) == 0)
    return g_strdup_printf (_("The plan is already the best use: it brings <b>%s</b> after what is bought for it."), plan);
  if (self->best_cents < self->plan_cents)
    return g_strdup_printf (_("The plan of %s cannot be had with these limits: the best that can brings <b>%s</b> after what is bought for it."),
                            plan, best);
  return g_strdup_printf (_("The best use brings <b>%s</b> after what is bought for it, <b>%s</b> more than the plan of %s."), best, more, plan);
}

static gboolean
binds (const SteadScarce *scarce)
{
  return scarce->worth_cents > WORTH;
}

/* "What holds it back: Brown hens, Oven and stove and the most of Eggs that sells." */
static char *
advice_of (const SteadBestUse *self)
{
  g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = NULL;

  if (self->n_clashing > 0)
    return g_strdup (_("Leave out any one of them, and the others can be kept together. Turn one back, or get more of what is short."));
  if (!self->solved)
    return NULL;
  for (guint k = 0; k < self->scarce->len; k++)
    if (binds (scarce_at (self, k)))
      g_ptr_array_add (names, g_markup_printf_escaped (_("“%s”"), scarce_at (self, k)->name));
  for (guint i = 0; i < self->lines->len; i++)
    {
      if (line_at (self, i)->most_cents > WORTH)
        /* Translators: a product; what holds a plan back. */
        g_ptr_array_add (names, g_markup_printf_escaped (_("the most of “%s” that sells"), line_at (self, i)->name));
      if (line_at (self, i)->least_cents > WORTH)
        /* Translators: a product; what holds a plan back. */
        g_ptr_array_add (names, g_markup_printf_escaped (_("what is promised of “%s”"), line_at (self, i)->name));
    }
  if (names->len == 0)
    return g_strdup (_("Nothing scarce holds it back."));
  list = join (names);
  /* Translators: a list of things that are scarce. */
  return g_strdup_printf (_("What holds it back: %s."), list);
}

/* --- the worth of one more --------------------------------------------------------------------- */

/* "1 dozen", "1 h"; "1 min" where an hour is more than the range holds. */
static char *
one_more (const SteadScarce *scarce,
          double            *out_cents)
{
  gboolean holds = scarce->amount + stead_scarce_telling (scarce) <= scarce->high;

  *out_cents = scarce->worth_cents;
  if (scarce->kind != STEAD_SCARCE_MINUTES || holds)
    return stead_scarce_amount (scarce, stead_scarce_telling (scarce));
  *out_cents /= MINUTES_PER_HOUR;
  /* Translators: a minute, short. */
  return g_strdup (_("1 min"));
}

static char *
scarce_sentence (const SteadBestUse *self,
                 const SteadScarce  *scarce)
{
  double cents;
  g_autofree char *name = g_markup_escape_text (scarce->name, -1);
  g_autofree char *one = one_more (scarce, &cents);
  g_autofree char *worth = money (self, cents);
  g_autofree char *low = stead_scarce_amount (scarce, isfinite (scarce->low) ? MAX (0, scarce->low) : 0);
  g_autofree char *high = isfinite (scarce->high) ? stead_scarce_amount (scarce, scarce->high) : NULL;

  if (high == NULL)
    return g_strdup_printf (_("%s: %s more is worth <b>%s</b>."), name, one, worth);
  /* Translators: something scarce, "1 dozen", what it is worth, and between which amounts that holds. */
  return g_strdup_printf (_("%s: %s more is worth <b>%s</b>, as long as there are %s to %s in all."), name, one, worth, low,
                          high);
}

static gboolean
is_taken (const SteadBestUse *self,
          guint               scarce)
{
  for (guint i = 0; i < self->lines->len; i++)
    if (stead_best_use_taken (self, i, scarce) > 0)
      return TRUE;
  return FALSE;
}

/* "Enough is there of the rest: Oven and stove (0.4 h stay over) and Egg carton (58 stay over)." */
static char *
enough_sentence (const SteadBestUse *self)
{
  g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = NULL;

  for (guint k = 0; k < self->scarce->len; k++)
    {
      const SteadScarce *scarce = scarce_at (self, k);
      g_autofree char *name = g_markup_escape_text (scarce->name, -1);
      g_autofree char *left = stead_scarce_amount (scarce, MAX (0, scarce->unused));

      if (!binds (scarce) && is_taken (self, k))
        /* Translators: something that is not scarce, and how much of it stays over. */
        g_ptr_array_add (names, g_strdup_printf (_("%s (%s stay over)"), name, left));
    }
  if (names->len == 0)
    return NULL;
  list = join (names);
  /* Translators: a list of things, each with what stays over. */
  return g_strdup_printf (_("Enough is there of: %s."), list);
}

static void
add_sentence (GString *text,
              char    *line)
{
  if (line == NULL)
    return;
  g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", line);
  g_free (line);
}

static void
add_line (GString                *text,
          const SteadBestUse     *self,
          const SteadBestUseLine *line)
{
  g_autofree char *name = g_markup_escape_text (line->name, -1);
  g_autofree char *one = stead_words_units (line->pack, 1);
  g_autofree char *most = money (self, line->most_cents);
  g_autofree char *least = money (self, line->least_cents);

  if (line->most_cents > WORTH)
    /* Translators: a product, "1 dozen", money. */
    add_sentence (text, g_strdup_printf (_("%s: if %s more could be sold, it would bring <b>%s</b>."), name, one, most));
  if (line->least_cents > WORTH)
    /* Translators: a product, "1 dozen", money. */
    add_sentence (text, g_strdup_printf (_("%s: the last %s that is promised costs the plan <b>%s</b>."), name, one, least));
}

void
stead_best_use_put_in_words (SteadBestUse *self)
{
  GString *text = g_string_new (NULL);

  for (guint k = 0; self->solved && k < self->scarce->len; k++)
    if (binds (scarce_at (self, k)))
      add_sentence (text, scarce_sentence (self, scarce_at (self, k)));
  for (guint i = 0; self->solved && i < self->lines->len; i++)
    add_line (text, self, line_at (self, i));
  if (self->solved)
    add_sentence (text, enough_sentence (self));
  g_free (self->sentence);
  g_free (self->advice);
  g_free (self->scarce_text);
  self->sentence = sentence_of (self);
  self->advice = advice_of (self);
  self->scarce_text = g_string_free (text, FALSE);
}
