/* stead-best-use-whys.c - how the best use of what is scarce comes about. */
#include "config.h"

#include "answer/stead-best-use-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define PROGRAMME N_("A linear program: OpenStax Contemporary Mathematics, section 5.11.")
#define DUALS N_("Shadow prices and their ranges; the duality theorem of linear programs. Common practice, no source.")

/* Less than a hundredth of a cent, or of a unit, is nothing. */
#define SOMETHING 0.01

static char *
money (const SteadBestUse *self,
       double              cents)
{
  return stead_money_format (stead_money_round (cents), self->currency);
}

static void
add_term (GString    *text,
          const char *between,
          char       *term)
{
  g_string_append_printf (text, "%s%s", text->len > 0 ? between : "", term);
  g_free (term);
}

/* --- what it brings -------------------------------------------------------------------- */

static SteadWhy *
objective_why (const SteadBestUse *self)
{
  GString *sum = g_string_new (NULL);
  g_autofree char *best = money (self, self->best_cents);

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadBestUseLine *line = line_at (self, i);
      g_autofree char *price = money (self, line->price_cents), *own = money (self, line->own_cents);
      g_autofree char *units = stead_words_units (line->pack, line->best);

      if (line->best > SOMETHING)
        add_term (sum, " + ", g_strdup_printf ("(%s − %s) × %s", price, own, units));
    }
  g_string_append_printf (sum, " = %s", best);
  return stead_why_new (g_strdup (_("What the best use brings")),
                        _("(price − what is bought for one) × how many, all products together. Of all plans that keep the "
                          "limits the one that brings the most is taken."),
                        g_string_free (sum, FALSE), _(PROGRAMME));
}

/* --- what limits it ---------------------------------------------------------------------- */

/* "Brown hens: 30 eggs + 90 eggs = 120 eggs of 120 eggs"; %NULL: nothing takes of it. */
static char *
taken_text (const SteadBestUse *self,
            guint               at)
{
  const SteadScarce *scarce = scarce_at (self, at);
  g_autoptr(GString) sum = g_string_new (NULL);
  g_autofree char *all = stead_scarce_amount (scarce, scarce->amount);
  g_autofree char *used = NULL;
  double taken = 0;

  for (guint i = 0; i < self->lines->len; i++)
    {
      double one = stead_best_use_taken (self, i, at) * line_at (self, i)->best;

      if (one > 0)
        add_term (sum, " + ", stead_scarce_amount (scarce, one));
      taken += one;
    }
  if (sum->len == 0)
    return NULL;
  used = stead_scarce_amount (scarce, taken);
  if (!g_str_equal (used, all))
    /* Translators: something scarce, what each product takes of it as a sum, together, and what there is. */
    return g_strdup_printf (_("%1$s: %2$s = %3$s, and %4$s is there"), scarce->name, sum->str, used, all);
  /* Translators: something scarce, what each product takes of it as a sum, together. */
  return g_strdup_printf (_("%1$s: %2$s = %3$s, all that is there"), scarce->name, sum->str, used);
}

static void
add_bound (GString                *text,
           const SteadBestUseLine *line)
{
  g_autofree char *best = stead_words_units (line->pack, line->best);

  if (line->most_cents > SOMETHING)
    /* Translators: a product, how many the plan makes of it. */
    add_term (text, "\n", g_strdup_printf (_("%1$s: %2$s, the most that sells"), line->name, best));
  if (line->least_cents > SOMETHING)
    /* Translators: a product, how many the plan makes of it. */
    add_term (text, "\n", g_strdup_printf (_("%1$s: %2$s, what is promised"), line->name, best));
}

static SteadWhy *
limits_why (const SteadBestUse *self)
{
  GString *text = g_string_new (NULL);

  for (guint k = 0; k < self->scarce->len; k++)
    {
      char *taken = taken_text (self, k);

      if (taken != NULL)
        add_term (text, "\n", taken);
    }
  for (guint i = 0; i < self->lines->len; i++)
    add_bound (text, line_at (self, i));
  return stead_why_new (g_strdup (_("What limits it")),
                        _("For each scarce thing: what one unit takes of it × how many, all products together, is at most what is "
                          "there. Each product: at least what is promised, at most what sells. What is used up holds the plan "
                          "back."),
                        g_string_free (text, FALSE), _(PROGRAMME));
}

/* --- what one more is worth ------------------------------------------------------------- */

/* All that is scarce at its worth is worth what the plan with parts of units brings. */
static SteadWhy *
worth_why (const SteadBestUse *self)
{
  GString *sum = g_string_new (NULL);
  double cents = 0;
  g_autofree char *all = NULL;

  for (guint k = 0; k < self->scarce->len; k++)
    {
      const SteadScarce *scarce = scarce_at (self, k);
      g_autofree char *amount = stead_scarce_amount (scarce, scarce->amount), *worth = money (self, scarce->worth_cents);

      if (scarce->worth_cents <= SOMETHING)
        continue;
      add_term (sum, " + ", g_strdup_printf ("%s × %s", amount, worth));
      cents += scarce->amount / stead_scarce_telling (scarce) * scarce->worth_cents;
    }
  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadBestUseLine *line = line_at (self, i);
      g_autofree char *most = stead_words_units (line->pack, line->most), *more = money (self, line->most_cents);
      g_autofree char *least = stead_words_units (line->pack, line->least), *less = money (self, line->least_cents);

      if (line->most_cents > SOMETHING)
        add_term (sum, " + ", g_strdup_printf ("%s × %s", most, more));
      if (line->least_cents > SOMETHING)
        add_term (sum, " ", g_strdup_printf ("− %s × %s", least, less));
      cents += line->most * line->most_cents - line->least * line->least_cents;
    }
  all = money (self, cents);
  if (sum->len == 0)
    {
      g_string_free (sum, TRUE);
      return NULL;
    }
  g_string_append_printf (sum, " = %s", all);
  return stead_why_new (g_strdup (_("What one more of it is worth")),
                        _("What the best plan would bring with one more of it − what it brings now, where a part of a unit may be "
                          "made. So everything that holds the plan back, each at its worth, is together worth as much as that "
                          "plan brings: no plan can bring more."),
                        g_string_free (sum, FALSE), _(DUALS));
}

static SteadWhy *
prices_why (const SteadBestUse *self)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < self->lines->len; i++)
    {
      g_autofree char *price = money (self, line_at (self, i)->price_cents);
      g_autofree char *prices = stead_best_use_prices (self, line_at (self, i));

      /* Translators: a product, its price, "$4.10 to $5.20". */
      add_term (text, "\n", g_strdup_printf (_("%1$s at %2$s: the same plan %3$s"), line_at (self, i)->name, price, prices));
    }
  return stead_why_new (g_strdup (_("Same plan at prices")),
                        _("One price is turned while all others stay. The plan stays the best until another one brings as much; "
                          "what it brings changes."),
                        g_string_free (text, FALSE), _(DUALS));
}

GPtrArray *
stead_best_use_whys (const SteadBestUse *self)
{
  GPtrArray *whys;
  SteadWhy *worth;

  g_return_val_if_fail (self != NULL, NULL);

  whys = stead_whys_new ();
  if (!self->solved)
    return whys;
  g_ptr_array_add (whys, objective_why (self));
  g_ptr_array_add (whys, limits_why (self));
  worth = worth_why (self);
  if (worth != NULL)
    g_ptr_array_add (whys, worth);
  g_ptr_array_add (whys, prices_why (self));
  return whys;
}
