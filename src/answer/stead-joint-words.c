/* stead-joint-words.c - a shared cost in words: who bears what, and what further work adds. */
#include "config.h"

#include "answer/stead-joint-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#define SOURCE_SHARES N_("Saylor Managerial Accounting, appendix 7.10")
#define SOURCE_NET N_("cost accounting solution sheet, problems 9.36 and 9.38")
#define SOURCE_FURTHER N_("OpenStax Principles of Accounting vol. 2, section 10.5")

static SteadJointPart *
part_at (const SteadJointAnswer *self,
         guint                   i)
{
  return self->parts->pdata[i];
}

static char *
money (const SteadJointAnswer *self,
       double                  cents)
{
  return stead_money_format (stead_money_round (cents), self->farm->currency);
}

const char *
stead_joint_method_name (SteadJointMethod method)
{
  switch (method)
    {
    case STEAD_JOINT_PHYSICAL: return C_("way to share a cost", "Physical share");
    case STEAD_JOINT_SPLIT_OFF_VALUE: return C_("way to share a cost", "Sales value at split-off");
    case STEAD_JOINT_NRV: return C_("way to share a cost", "Net realizable value");
    case STEAD_JOINT_CONSTANT_MARGIN: return C_("way to share a cost", "Same margin for each");
    default: g_return_val_if_reached ("");
    }
}

/* --- the sentence ------------------------------------------------------------------------ */

/* The names of parts that @wanted picks, as a list; %NULL without any. */
static char *
list_of (const SteadJointAnswer *self,
         char                 *(*wanted) (const SteadJointAnswer *self, const SteadJointPart *part))
{
  g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < self->parts->len; i++)
    {
      char *name = wanted (self, part_at (self, i));

      if (name != NULL)
        g_ptr_array_add (names, name);
    }
  if (names->len == 0)
    return NULL;
  g_ptr_array_add (names, NULL);
  return stead_words_list ((const char * const *) names->pdata);
}

static char *
share_text (const SteadJointAnswer *self,
            const SteadJointPart   *part)
{
  g_autofree char *name = g_markup_escape_text (part->name, -1);
  g_autofree char *cents = money (self, (double) part->share_cents[self->method]);

  /* Translators: a product and what it bears of a cost: "Eggs $912.40". */
  return part->carries ? g_strdup_printf (C_("share of a cost", "%s <b>%s</b>"), name, cents) : NULL;
}

static char *
sentence_of (const SteadJointAnswer *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *all = money (self, (double) self->joint_cents);
  g_autofree char *batch = g_markup_escape_text (self->batch->name, -1);
  g_autofree char *shares = list_of (self, share_text), *first = NULL, *second = NULL, *third = NULL;

  /* Translators: money, the name of a batch. */
  first = g_strdup_printf (self->feed_only ? _("<b>%s</b> of feed for %s grows all of this together.")
                                           : _("<b>%s</b> in all goes into %s and makes all of this together."), all, batch);
  if (self->usable[self->method])
    /* Translators: a way to share a cost, and "Eggs $912.40 and Hens at the end $25.00". */
    second = g_strdup_printf (_("By “%s” it is %s."), stead_joint_method_name (self->method), shares);
  else
    second = g_strdup_printf (_("“%s” has nothing to go by yet."), stead_joint_method_name (self->method));
  third = g_strdup_printf (_("Another way moves cost from one to the other; together it is always %s."), all);
  stead_words_add (text, first);
  stead_words_add (text, second);
  stead_words_add (text, third);
  return stead_words_end (text);
}

/* --- further work ---------------------------------------------------------------------------- */

static char *
further_text (const SteadJointAnswer *self,
              const SteadJointPart   *part)
{
  g_autofree char *name = g_markup_escape_text (part->name, -1);
  g_autofree char *made = part->made != NULL ? g_markup_escape_text (part->made, -1) : NULL;
  g_autofree char *more = money (self, fabs (part->more_cents));
  gboolean pays = stead_money_round (part->more_cents) > 0;

  if (made != NULL)
    /* Translators: a product made, what it is made of, money. */
    return g_strdup_printf (pays ? _("Making “%s” of %s leaves <b>%s more</b> than selling it as it comes, whichever way the "
                                     "cost is shared: it pays.")
                                 : _("Making “%s” of %s leaves <b>%s less</b> than selling it as it comes, whichever way the "
                                     "cost is shared: it does not pay."), made, name, more);
  return g_strdup_printf (pays ? _("More work on %s leaves <b>%s more</b> than selling it as it comes, whichever way the cost "
                                   "is shared: it pays.")
                               : _("More work on %s leaves <b>%s less</b> than selling it as it comes, whichever way the cost "
                                   "is shared: it does not pay."), name, more);
}

static char *
advice_of (const SteadJointAnswer *self)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < self->parts->len; i++)
    if (isfinite (part_at (self, i)->more_cents))
      {
        g_autofree char *line = further_text (self, part_at (self, i));

        stead_words_add (text, line);
      }
  return stead_words_end (text);
}

/* --- what is missing --------------------------------------------------------------------------- */

static gboolean
is_there (const SteadJointPart *part)
{
  return part->carries && part->value[STEAD_JOINT_QUANTITY] > 0;
}

static char *
unweighed (const SteadJointAnswer *self,
           const SteadJointPart   *part)
{
  return is_there (part) && !(part->value[STEAD_JOINT_WEIGHT] > 0) ? g_strdup (part->name) : NULL;
}

static char *
unpriced (const SteadJointAnswer *self,
          const SteadJointPart   *part)
{
  return is_there (part) && !(part->value[STEAD_JOINT_SPLIT] > 0) ? g_strdup (part->name) : NULL;
}

static char *
uncounted (const SteadJointAnswer *self,
           const SteadJointPart   *part)
{
  return part->carries && !(part->value[STEAD_JOINT_QUANTITY] > 0) ? g_strdup (part->name) : NULL;
}

/* How the cost sheet treats it, whatever is chosen here. */
static const char *
sheet_text (const SteadJointAnswer *self)
{
  switch (self->batch->kind)
    {
    case STEAD_BATCH_FLOCK:
      return _("The cost sheet goes its own way: it takes the worth of the birds at the end off the cost of the eggs.");
    case STEAD_BATCH_FISH:
      return _("The cost sheet goes its own way: there the fish bear all of their feed.");
    case STEAD_BATCH_CROP:
    case STEAD_BATCH_KITCHEN:
    default:
      return _("The cost sheet goes its own way: there each pound or kilogram of good fruit bears the same.");
    }
}

static char *
caution_of (const SteadJointAnswer *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *weights = list_of (self, unweighed), *prices = list_of (self, unpriced), *none = list_of (self, uncounted);
  g_autofree char *first = NULL, *second = NULL, *third = NULL;

  /* Translators: names of products. */
  if (none != NULL)
    first = g_strdup_printf (_("Nothing is known yet of how much there will be of: %s."), none);
  if (weights != NULL)
    second = g_strdup_printf (_("For the physical share, put in what one weighs of: %s."), weights);
  if (prices != NULL)
    third = g_strdup_printf (_("No price as it comes is known, so it counts as given away: %s."), prices);
  stead_words_add (text, first);
  stead_words_add (text, second);
  stead_words_add (text, third);
  stead_words_add (text, sheet_text (self));
  return stead_words_end (text);
}

void
stead_joint_put_in_words (SteadJointAnswer *self)
{
  g_free (self->sentence);
  g_free (self->advice);
  g_free (self->caution);
  self->sentence = sentence_of (self);
  self->advice = advice_of (self);
  self->caution = caution_of (self);
}

/* --- worked out ------------------------------------------------------------------------------------- */

/* "60 × $4.50 − 60 × $0.20" or "60 × 0.72 kg": what a method counts of @part. */
static char *
basis_text (const SteadJointAnswer *self,
            const SteadJointPart   *part,
            SteadJointMethod        method)
{
  SteadJointProduct product = stead_joint_product_of (part);
  g_autofree char *units = stead_words_units_exact (part->pack, part->value[STEAD_JOINT_QUANTITY], 1);
  g_autofree char *weight = stead_number_format (product.quantity, 1);
  g_autofree char *split = money (self, part->value[STEAD_JOINT_SPLIT]), *final = money (self, product.final_cents);
  g_autofree char *further = money (self, product.further_cents);

  switch (method)
    {
    case STEAD_JOINT_PHYSICAL: return g_strdup_printf (_("%s kg"), weight);
    /* Translators: "60 dozen", a price. */
    case STEAD_JOINT_SPLIT_OFF_VALUE: return g_strdup_printf (_("%s × %s"), units, split);
    case STEAD_JOINT_NRV: return g_strdup_printf (_("%s − %s"), final, further);
    case STEAD_JOINT_CONSTANT_MARGIN:
    default: return g_strdup (final);
    }
}

static char *
worked_share (const SteadJointAnswer *self,
              SteadJointMethod        method)
{
  GString *text = g_string_new (NULL);
  g_autofree SteadJointProduct *products = g_new0 (SteadJointProduct, self->parts->len);
  double sum = 0, margin;
  g_autofree char *all = money (self, (double) self->joint_cents), *rest = NULL;

  for (guint i = 0; i < self->parts->len; i++)
    {
      products[i] = stead_joint_product_of (part_at (self, i));
      sum += MAX (stead_joint_basis (&products[i], method), 0);
    }
  margin = stead_joint_overall_margin (products, self->parts->len, (double) self->joint_cents);
  rest = stead_words_percent (1 - margin, 1);
  for (guint i = 0; i < self->parts->len; i++)
    {
      const SteadJointPart *part = part_at (self, i);
      g_autofree char *basis = basis_text (self, part, method), *cents = money (self, (double) part->share_cents[method]);
      g_autofree char *share = stead_words_percent (MAX (stead_joint_basis (&products[i], method), 0) / sum, 1);
      g_autofree char *further = money (self, products[i].further_cents);

      if (!part->carries)
        continue;
      if (text->len > 0)
        g_string_append_c (text, '\n');
      if (method == STEAD_JOINT_CONSTANT_MARGIN)
        /* Translators: a product, its final value, what all cost is of all value, its own cost, its share. */
        g_string_append_printf (text, _("%s: %s × %s − %s = %s"), part->name, basis, rest, further, cents);
      else
        /* Translators: a product, what is counted of it, its share of all that is counted, the cost, its part. */
        g_string_append_printf (text, _("%s: %s, that is %s; %s × %s = %s"), part->name, basis, share, all, share, cents);
    }
  return g_string_free (text, FALSE);
}

static SteadWhy *
why_of (const SteadJointAnswer *self,
        SteadJointMethod        method)
{
  static const char * const formulas[] = {
    N_("shared cost × its weight ÷ all weight"),
    N_("shared cost × its value where they part ÷ all value there"),
    N_("shared cost × (its final value − its own further cost) ÷ all of that"),
    N_("its final value × (all cost ÷ all final value) − its own further cost"),
  };

  return stead_why_new (g_strdup (stead_joint_method_name (method)), _(formulas[method]), worked_share (self, method),
                        method < STEAD_JOINT_NRV ? _(SOURCE_SHARES) : _(SOURCE_NET));
}

static SteadWhy *
further_why (const SteadJointAnswer *self,
             const SteadJointPart   *part)
{
  SteadJointProduct product = stead_joint_product_of (part);
  g_autofree char *final = money (self, product.final_cents), *split = money (self, product.split_cents);
  g_autofree char *further = money (self, product.further_cents), *more = money (self, part->more_cents);

  /* Translators: a product. */
  return stead_why_new (g_strdup_printf (_("More work on %s"), part->name),
                        _("value after the work − value as it comes − cost of the work; the shared cost is the same either way"),
                        g_strdup_printf (_("%s − %s − %s = %s"), final, split, further, more), _(SOURCE_FURTHER));
}

GPtrArray *
stead_joint_answer_whys (const SteadJointAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
    if (self->usable[method])
      g_ptr_array_add (whys, why_of (self, method));
  for (guint i = 0; i < self->parts->len; i++)
    if (isfinite (part_at (self, i)->more_cents))
      g_ptr_array_add (whys, further_why (self, part_at (self, i)));
  return whys;
}
