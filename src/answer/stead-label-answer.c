/* stead-label-answer.c - "What must stand on the label of this pack, and how large?" */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-label-private.h"
#include "answer/stead-limits.h"
#include "answer/stead-words.h"
#include "core/stead-food-label.h"
#include "core/stead-money.h"
#include "store/stead-kitchen-repo.h"
#include "store/stead-store-error.h"

/* The words of the limit tables for eggs in the shell. */
#define SHELL_EGGS "raw_shell_eggs"

/* A number and its unit stay in one line. */
#define NO_BREAK "\302\240"

/* No rule of the table: 21 CFR 101.2(c) asks for a sixteenth of an inch in all that is required. */
#define LETTER_IN 0.0625

static void
facts_clear (SteadLabelFacts *facts)
{
  g_clear_pointer (&facts->farm, stead_farm_free);
  g_clear_pointer (&facts->item, stead_item_free);
  g_clear_pointer (&facts->product, stead_product_free);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SteadLabelFacts, facts_clear)

void
stead_label_answer_free (SteadLabelAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->lot, stead_lot_free);
  g_free (self->name);
  g_free (self->price);
  g_free (self->ingredients);
  g_free (self->contains);
  g_free (self->safe);
  g_free (self->keep);
  g_free (self->dates);
  g_free (self->farm);
  g_free (self->net);
  g_clear_pointer (&self->missing, g_ptr_array_unref);
  g_clear_pointer (&self->whys, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

const char *
stead_label_kind_name (SteadLabelKind kind)
{
  switch (kind)
    {
    case STEAD_LABEL_CARTON: return _("Egg carton");
    case STEAD_LABEL_JAR:    return _("Jar");
    case STEAD_LABEL_TRAY:   return _("Tray or bag");
    case STEAD_LABEL_SHELF:
    default:                 return _("Shelf");
    }
}

double
stead_label_panel_usual (SteadLabelKind kind)
{
  /* Lid of a carton of a dozen; 40 % of height × circumference of a pint jar; a tray's lid. */
  static const double panels[STEAD_N_LABEL_KINDS] = { 45, 20, 30, 7 };

  return panels[kind];
}

static gboolean
is_eggs (const SteadItem *item)
{
  return g_strcmp0 (item->food, SHELL_EGGS) == 0;
}

void
stead_label_add_missing (SteadLabelAnswer *out,
                         const char       *sentence)
{
  g_ptr_array_add (out->missing, g_strdup (sentence));
}

/* --- what is read ----------------------------------------------------------------- */

static gboolean
read_product (SteadLabelFacts  *facts,
              GError          **error)
{
  gint64 id = stead_product_repo_of_item (facts->store, facts->item->id, error);

  if (id > 0)
    facts->product = stead_product_repo_get (facts->store, id, error);
  return id == 0 || facts->product != NULL;
}

static gboolean
read_recipe (SteadLabelFacts  *facts,
             GError          **error)
{
  g_autoptr(GError) problem = NULL;
  g_autoptr(SteadKitchen) kitchen = NULL;

  if (facts->out->lot->batch_id == 0)
    return TRUE;
  kitchen = stead_kitchen_repo_get (facts->store, facts->out->lot->batch_id, &problem);
  if (kitchen != NULL)
    facts->recipe_id = kitchen->recipe_id;
  if (problem == NULL || g_error_matches (problem, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND))
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

static gboolean
read_facts (SteadLabelFacts  *facts,
            gint64            lot_id,
            GError          **error)
{
  facts->out->lot = stead_lot_repo_get (facts->store, lot_id, error);
  if (facts->out->lot == NULL)
    return FALSE;
  facts->farm = stead_farm_repo_get (facts->store, error);
  facts->item = facts->farm != NULL ? stead_item_repo_get (facts->store, facts->out->lot->item_id, error) : NULL;
  return facts->item != NULL && read_product (facts, error) && read_recipe (facts, error);
}

/* --- the words -------------------------------------------------------------------- */

const char *
stead_label_item_name (const SteadItem *item)
{
  return item->label_name != NULL ? item->label_name : item->name;
}

static void
word_name (SteadLabelFacts *facts)
{
  const SteadLabelAnswer *out = facts->out;

  facts->out->name = g_strdup (out->kind == STEAD_LABEL_SHELF && facts->product != NULL ? facts->product->name
                                                                                       : stead_label_item_name (facts->item));
}

static gboolean
word_price (SteadLabelFacts  *facts,
            GError          **error)
{
  g_autoptr(GError) problem = NULL;
  gint64 cents = -1;

  if (facts->out->kind != STEAD_LABEL_SHELF)
    return TRUE;
  if (facts->product != NULL)
    cents = stead_product_repo_price_on (facts->store, facts->product->id, stead_store_get_today (facts->store), &problem);
  if (problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  if (cents >= 0)
    facts->out->price = stead_money_format (cents, facts->farm->currency);
  else
    stead_label_add_missing (facts->out, _("There is no price: make a product of it and set its price in Price."));
  return TRUE;
}

/* The law's own words are English, whatever the farm's language.  "1 egg", "12 eggs" */
static char *
count_text (double      n,
            const char *one)
{
  return g_strdup_printf (round (n) == 1 ? "%.0f %s" : "%.0f %ss", n, one);
}

/* Net quantity of one pack: by the product, which says how much is in one. */
static void
word_net (SteadLabelFacts *facts)
{
  SteadLabelAnswer *out = facts->out;
  double base = facts->product != NULL ? facts->product->base_per_unit : NAN;
  g_autoptr(GError) problem = NULL;
  g_autofree char *law = NULL;

  if (isnan (base))
    {
      stead_label_add_missing (out, _("How much is in one pack is not known: make a product that is packed from it, in Price."));
      return;
    }
  switch (facts->item->unit->dimension)
    {
    case STEAD_DIMENSION_MASS:
      law = stead_net_weight_text (base / STEAD_LABEL_OZ_KG, &problem);
      if (law != NULL)
        out->net = g_strdup_printf ("%s %.0f" NO_BREAK "g", law, round (base * 1000));
      break;
    case STEAD_DIMENSION_VOLUME:
      law = stead_net_fluid_text (base / STEAD_LABEL_FLOZ_L, &problem);
      if (law != NULL)
        out->net = g_strdup_printf ("%s %.0f" NO_BREAK "mL", law, round (base * 1000));
      break;
    default:
      out->net = count_text (base, is_eggs (facts->item) ? "egg" : "piece");
      break;
    }
  if (problem != NULL)
    stead_label_add_missing (out, problem->message);
}

/* --- dates, care, farm ---------------------------------------------------------------- */

static void
word_dates (SteadLabelFacts *facts)
{
  SteadLabelAnswer *out = facts->out;
  g_autofree char *made = stead_day_format (out->lot->day, STEAD_DAY_STYLE_ENGLISH);
  const char *verb = facts->recipe_id != 0 ? "Made" : "Packed";

  if (out->kind == STEAD_LABEL_SHELF)
    return;
  if (out->lot->best_by == STEAD_DAY_NONE)
    {
      out->dates = g_strdup_printf ("%s %s.", verb, made);
      stead_label_add_missing (out, _("The lot has no best-by day. Enter it with the lot, or give the item a shelf life in Keep."));
    }
  else
    {
      g_autofree char *best = stead_day_format (out->lot->best_by, STEAD_DAY_STYLE_ENGLISH);

      out->dates = g_strdup_printf ("%s %s.\nBest by %s.", verb, made, best);
    }
}

static gboolean
word_care (SteadLabelFacts  *facts,
           GError          **error)
{
  SteadLabelAnswer *out = facts->out;
  g_autoptr(SteadRecipe) recipe = NULL;

  if (out->kind == STEAD_LABEL_SHELF)
    return TRUE;
  if (facts->recipe_id != 0 && (recipe = stead_recipe_repo_get (facts->store, facts->recipe_id, error)) == NULL)
    return FALSE;
  if (is_eggs (facts->item))
    {
      const SteadLimit *row = stead_limit_table_by_id (stead_limits_get (), "egg-statement");
      const char *colon = row != NULL ? strchr (row->word, ':') : NULL;

      g_return_val_if_fail (colon != NULL, FALSE);
      out->safe = g_strdup (row->word);
      out->safe_bold = (gsize) (colon - row->word);
      out->keep = g_strdup ("Keep refrigerated.");
    }
  else if (recipe != NULL && recipe->kept == STEAD_KEPT_COLD)
    out->keep = g_strdup ("Keep refrigerated.");
  else if (recipe != NULL && recipe->kept == STEAD_KEPT_FROZEN)
    out->keep = g_strdup ("Keep frozen.");
  return TRUE;
}

static void
word_farm (SteadLabelFacts *facts)
{
  SteadLabelAnswer *out = facts->out;

  if (out->kind == STEAD_LABEL_SHELF)
    return;
  out->farm = facts->farm->address == NULL ? g_strdup (facts->farm->name)
                                           : g_strdup_printf ("%s, %s", facts->farm->name, facts->farm->address);
  if (facts->farm->address == NULL)
    stead_label_add_missing (out, _("The farm's address is missing: a label names the place of business. Enter it in the settings of the farm."));
}

/* --- sizes ---------------------------------------------------------------------------- */

static gboolean
size_letters (SteadLabelAnswer  *out,
              GError           **error)
{
  SteadLimitFact facts[] = { { "panel_in2", NULL, out->panel_in2 }, { NULL } };

  out->net_rule = stead_limit_table_find (stead_limits_get (), "label_type", "net_quantity", "type_height", facts, error);
  if (out->net_rule == NULL)
    return FALSE;
  out->net_letter_in = out->kind == STEAD_LABEL_SHELF ? LETTER_IN : out->net_rule->value;
  out->letter_in = LETTER_IN;
  return TRUE;
}

static void
say (SteadLabelAnswer *out)
{
  g_autofree char *source = stead_limits_source (out->net_rule);
  g_autofree char *height = stead_number_format (out->net_letter_in, 4);
  g_autofree char *panel = stead_number_format (out->panel_in2, 1);

  if (out->missing->len > 0)
    out->sentence = g_strdup_printf (ngettext ("<b>%d thing is missing</b> before this label can be used.",
                                               "<b>%d things are missing</b> before this label can be used.",
                                               out->missing->len), (int) out->missing->len);
  else if (out->kind == STEAD_LABEL_SHELF)
    out->sentence = g_strdup (_("The card for the shelf is ready."));
  else
    /* Translators: a height and an area in inches and square inches; the name of a law. */
    out->sentence = g_strdup_printf (_("The words are complete. On a main panel of %s square inches the letters of the net "
                                       "quantity are <b>at least %s inch high</b> (%s)."), panel, height, source);
  out->caution = g_strdup (_("Your state or county may ask for more: a permit number, a grade, a note that it was made in "
                             "a school kitchen, or nutrition facts. Ask the local health department before the first sale. Bottled foods need "
                             "the approval of a process authority."));
}

/* --- all -------------------------------------------------------------------------------- */

gboolean
stead_label_kind_for (SteadStore      *store,
                      const SteadLot  *lot,
                      SteadLabelKind  *out_kind,
                      GError         **error)
{
  g_autoptr(SteadItem) item = stead_item_repo_get (store, lot->item_id, error);

  if (item == NULL)
    return FALSE;
  if (is_eggs (item))
    *out_kind = STEAD_LABEL_CARTON;
  else
    *out_kind = item->unit->dimension == STEAD_DIMENSION_VOLUME ? STEAD_LABEL_JAR : STEAD_LABEL_TRAY;
  return TRUE;
}

SteadLabelAnswer *
stead_label_answer_new (SteadStore      *store,
                        gint64           lot_id,
                        SteadLabelKind   kind,
                        double           panel_in2,
                        GError         **error)
{
  g_autoptr(SteadLabelAnswer) out = g_new0 (SteadLabelAnswer, 1);
  g_auto(SteadLabelFacts) facts = { .store = store, .out = out };

  g_return_val_if_fail (STEAD_IS_STORE (store) && kind < STEAD_N_LABEL_KINDS, NULL);
  out->kind = kind;
  out->panel_in2 = panel_in2 > 0 ? panel_in2 : stead_label_panel_usual (kind);
  out->missing = g_ptr_array_new_with_free_func (g_free);
  out->whys = stead_whys_new ();
  if (!read_facts (&facts, lot_id, error) || !size_letters (out, error))
    return NULL;
  word_name (&facts);
  word_net (&facts);
  word_dates (&facts);
  word_farm (&facts);
  stead_label_word_whys (&facts);
  if (!word_price (&facts, error) || !stead_label_word_contents (&facts, error) || !word_care (&facts, error))
    return NULL;
  say (out);
  return g_steal_pointer (&out);
}
