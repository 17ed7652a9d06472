/* stead-skill-answer.c - "What can this person do, and what shows it?" */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-skill-answer.h"
#include "core/stead-hours.h"
#include "core/stead-money.h"
#include "store/stead-shown-repo.h"

static void
row_free (SteadSkillRow *row)
{
  stead_skill_free (row->skill);
  g_ptr_array_unref (row->tries);
  g_ptr_array_unref (row->evidence);
  g_free (row);
}

void
stead_skill_answer_free (SteadSkillAnswer *self)
{
  if (self == NULL)
    return;
  stead_farm_free (self->farm);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_free (self->name);
  g_free (self->sentence);
  g_free (self);
}

/* --- words ---------------------------------------------------------------------- */

const char *
stead_skill_level_text (int level)
{
  switch (level)
    {
    case STEAD_SKILL_SAW:    return C_("how well a skill goes", "saw it");
    case STEAD_SKILL_HELPED: return C_("how well a skill goes", "did it with help");
    case STEAD_SKILL_ALONE:  return C_("how well a skill goes", "does it alone");
    case STEAD_SKILL_SHOWS:  return C_("how well a skill goes", "shows it to others");
    default:                 return C_("how well a skill goes", "not tried yet");
    }
}

const char *
stead_evidence_kind_name (SteadEvidenceKind what)
{
  static const char * const names[STEAD_N_EVIDENCE_KINDS] = {
    NC_("row of the log", "Day of a batch"), NC_("row of the log", "Harvest"), NC_("row of the log", "Weighing"),
    NC_("row of the log", "Water test"), NC_("row of the log", "Kitchen batch"), NC_("row of the log", "Checklist"),
    NC_("row of the log", "Reading"), NC_("row of the log", "Receipt"), NC_("row of the log", "Cost sheet"),
    NC_("row of the log", "Sale day"), NC_("row of the log", "Build"), NC_("row of the log", "Hours"),
    NC_("row of the log", "Picture"),
  };

  g_return_val_if_fail ((guint) what < STEAD_N_EVIDENCE_KINDS, NULL);
  return g_dpgettext2 (GETTEXT_PACKAGE, "row of the log", names[what]);
}

SteadTarget
stead_evidence_target (const SteadEvidence *evidence)
{
  gboolean cooked = g_strcmp0 (evidence->detail, "kitchen") == 0;

  if (evidence->is_gone || evidence->target_id == 0)
    return STEAD_TARGET_NONE;
  switch (evidence->what)
    {
    case STEAD_EVIDENCE_ENTRY:
    case STEAD_EVIDENCE_HARVEST:
    case STEAD_EVIDENCE_WEIGHING:  return cooked ? STEAD_TARGET_KITCHEN : STEAD_TARGET_BATCH;
    case STEAD_EVIDENCE_WATER:     return STEAD_TARGET_WATER;
    case STEAD_EVIDENCE_KITCHEN:   return STEAD_TARGET_KITCHEN;
    case STEAD_EVIDENCE_CHECKLIST: return STEAD_TARGET_CHECKLIST;
    case STEAD_EVIDENCE_READING:   return evidence->b > 0 ? STEAD_TARGET_KITCHEN : STEAD_TARGET_CHECKLIST;
    case STEAD_EVIDENCE_RECEIPT:   return STEAD_TARGET_RECEIPT;
    case STEAD_EVIDENCE_PRODUCT:   return STEAD_TARGET_PRODUCT;
    case STEAD_EVIDENCE_SALE:      return STEAD_TARGET_SALE;
    case STEAD_EVIDENCE_BUILD:     return STEAD_TARGET_BUILD;
    case STEAD_EVIDENCE_WORK:
    case STEAD_EVIDENCE_SHOT:
    default:                       return STEAD_TARGET_NONE;
    }
}

static gboolean
is_temperature (const char *kind)   /* (nullable) */
{
  return kind != NULL && (g_str_has_suffix (kind, "_temp") || g_str_equal (kind, STEAD_SHOWN_ICE_BATH) ||
                          g_str_equal (kind, STEAD_SHOWN_BOILING_WATER));
}

static char *
reading_text (const SteadEvidence *evidence,
              const SteadFarm     *farm,
              const char          *day)
{
  gboolean is_warmth = is_temperature (evidence->detail);
  gboolean metric = farm->units == STEAD_UNITS_METRIC;
  g_autofree char *number = stead_number_format (is_warmth && !metric ? evidence->a * 9 / 5 + 32 : evidence->a,
                                                 is_warmth ? 0 : 1);
  const char *name = evidence->name != NULL ? evidence->name : C_("a list without a name", "no list");

  if (!is_warmth)
    /* Translators: a number, the name of a list, a day. */
    return g_strdup_printf (_("A reading of %1$s for “%2$s” on %3$s"), number, name, day);
  /* Translators: a temperature, the name of a list, a day. */
  return metric ? g_strdup_printf (_("A reading of %1$s °C for “%2$s” on %3$s"), number, name, day)
                : g_strdup_printf (_("A reading of %1$s °F for “%2$s” on %3$s"), number, name, day);
}

static char *
entry_text (const SteadEvidence *evidence,
            const char          *day)
{
  g_autofree char *eggs = NULL;

  if (isnan (evidence->a))
    /* Translators: the name of a batch, a day. */
    return g_strdup_printf (_("The log of %1$s on %2$s"), evidence->name, day);
  eggs = stead_words_eggs ((gint64) evidence->a);
  /* Translators: "22 eggs", the name of a flock, a day. */
  return g_strdup_printf (_("%1$s in the log of %2$s on %3$s"), eggs, evidence->name, day);
}

static char *
hours_text (const SteadEvidence *evidence,
            const char          *day)
{
  g_autofree char *hours = stead_hours_format ((gint64) (evidence->a + 0.5));

  /* Translators: "3:25" hours, what was done, a day. */
  return g_strdup_printf (_("%1$s h of %2$s on %3$s"), hours, evidence->name, day);
}

char *
stead_evidence_text (const SteadEvidence *evidence,
                     const SteadFarm     *farm)
{
  g_autofree char *day = NULL;
  g_autofree char *money = NULL;
  const char *name = evidence->name;

  g_return_val_if_fail (evidence != NULL && farm != NULL, NULL);
  if (evidence->is_gone)
    /* Translators: %s is a kind of row: "Receipt". */
    return g_strdup_printf (_("%s: this row is no longer in the log"), stead_evidence_kind_name (evidence->what));
  day = evidence->day != STEAD_DAY_NONE ? stead_day_format (evidence->day, STEAD_DAY_STYLE_MEDIUM) : g_strdup ("");
  switch (evidence->what)
    {
    case STEAD_EVIDENCE_ENTRY:     return entry_text (evidence, day);
    case STEAD_EVIDENCE_READING:   return reading_text (evidence, farm, day);
    case STEAD_EVIDENCE_WORK:      return hours_text (evidence, day);
    /* Translators: in each of these a name and a day. */
    case STEAD_EVIDENCE_HARVEST:   return g_strdup_printf (_("A harvest of %1$s on %2$s"), name, day);
    case STEAD_EVIDENCE_WEIGHING:  return g_strdup_printf (_("A weighing of %1$s on %2$s"), name, day);
    case STEAD_EVIDENCE_WATER:     return g_strdup_printf (_("A water test of %1$s on %2$s"), name, day);
    case STEAD_EVIDENCE_KITCHEN:   return g_strdup_printf (_("The kitchen batch %1$s on %2$s"), name, day);
    case STEAD_EVIDENCE_CHECKLIST: return g_strdup_printf (_("The checklist “%1$s” on %2$s"), name, day);
    case STEAD_EVIDENCE_SALE:      return g_strdup_printf (_("The sale day %1$s on %2$s"), name, day);
    case STEAD_EVIDENCE_SHOT:      return g_strdup_printf (_("The picture “%1$s” of %2$s"), name, day);
    /* Translators: the name of a product, of a build. */
    case STEAD_EVIDENCE_PRODUCT:   return g_strdup_printf (_("The cost sheet of %s"), name);
    case STEAD_EVIDENCE_BUILD:     return g_strdup_printf (_("The build %s"), name);
    case STEAD_EVIDENCE_RECEIPT:
    default:
      money = stead_money_format ((gint64) (isnan (evidence->a) ? 0 : evidence->a), farm->currency);
      /* Translators: a supplier, a sum of money, a day. */
      return g_strdup_printf (_("The receipt of %1$s over %2$s on %3$s"), name, money, day);
    }
}

/* --- the answer ------------------------------------------------------------------- */

static SteadSkillRow *
row_of (SteadSkillAnswer *self,
        gint64            skill_id)
{
  for (guint i = 0; i < self->rows->len; i++)
    if (((SteadSkillRow *) self->rows->pdata[i])->skill->id == skill_id)
      return self->rows->pdata[i];
  return NULL;
}

static SteadSkillRow *
row_of_try (SteadSkillAnswer *self,
            gint64            try_id)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      SteadSkillRow *row = self->rows->pdata[i];

      for (guint k = 0; k < row->tries->len; k++)
        if (((const SteadSkillTry *) row->tries->pdata[k])->id == try_id)
          return row;
    }
  return NULL;
}

static gboolean
read_list (SteadStore        *store,
           SteadSkillAnswer  *self,
           GError           **error)
{
  g_autoptr(GPtrArray) skills = stead_skill_repo_list (store, TRUE, error);

  if (skills == NULL)
    return FALSE;
  g_ptr_array_set_free_func (skills, NULL);
  for (guint i = 0; i < skills->len; i++)
    {
      SteadSkillRow *row = g_new0 (SteadSkillRow, 1);

      row->skill = skills->pdata[i];
      row->last_on = STEAD_DAY_NONE;
      row->tries = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_skill_try_free);
      row->evidence = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_evidence_free);
      g_ptr_array_add (self->rows, row);
    }
  return TRUE;
}

static gboolean
read_tries (SteadStore        *store,
            SteadSkillAnswer  *self,
            GError           **error)
{
  g_autoptr(GPtrArray) tries = stead_skill_repo_tries (store, self->person_id, error);
  g_autoptr(GPtrArray) evidence = tries != NULL ? stead_skill_repo_evidence (store, self->person_id, error) : NULL;

  if (evidence == NULL)
    return FALSE;
  g_ptr_array_set_free_func (tries, NULL);
  for (guint i = 0; i < tries->len; i++)
    {
      SteadSkillTry *try_ = tries->pdata[i];
      SteadSkillRow *row = row_of (self, try_->skill_id);

      row->is_checked = (int) try_->level > row->best ? try_->checked_by != 0
                        : (int) try_->level == row->best ? row->is_checked || try_->checked_by != 0 : row->is_checked;
      row->best = MAX (row->best, (int) try_->level);
      row->last_on = try_->day;
      g_ptr_array_add (row->tries, try_);
    }
  g_ptr_array_set_free_func (evidence, NULL);
  for (guint i = 0; i < evidence->len; i++)
    g_ptr_array_add (row_of_try (self, ((SteadEvidence *) evidence->pdata[i])->try_id)->evidence, evidence->pdata[i]);
  return TRUE;
}

/* One that was taken off the list and never tried says nothing of this person. */
static void
drop_idle (SteadSkillAnswer *self)
{
  for (guint i = self->rows->len; i > 0; i--)
    {
      const SteadSkillRow *row = self->rows->pdata[i - 1];

      if (row->skill->retired_on != STEAD_DAY_NONE && row->tries->len == 0)
        g_ptr_array_remove_index (self->rows, i - 1);
    }
}

static void
count (SteadSkillAnswer *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      const SteadSkillRow *row = self->rows->pdata[i];
      gboolean is_shown = FALSE;

      for (guint k = 0; k < row->evidence->len; k++)
        is_shown = is_shown || !((const SteadEvidence *) row->evidence->pdata[k])->is_gone;
      self->n_tried += row->best > 0;
      self->n_alone += row->best >= STEAD_SKILL_ALONE;
      self->n_shown += is_shown;
      self->n_checked += row->is_checked;
    }
  self->covered_frac = self->rows->len > 0 ? (double) self->n_tried / self->rows->len : NAN;
}

static char *
say (const SteadSkillAnswer *self)
{
  g_autofree char *name = g_markup_escape_text (self->name, -1);

  if (self->rows->len == 0)
    return g_strdup (_("There is no list of skills yet. Enter the school's own list, or codes of a content standard "
                       "with the school's wording."));
  if (self->n_tried == 0)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%2$s has not tried the <b>%1$d</b> skill of the list yet.",
                                         "%2$s has tried none of the <b>%1$d</b> skills of the list yet.",
                                         self->rows->len), (int) self->rows->len, name);
  /* Translators: a name; skills tried; skills of the list; done alone; with rows of the log that show it; checked. */
  return g_strdup_printf (_("%1$s tried <b>%2$d of %3$d</b> skills: %4$d alone, %5$d shown by the log, %6$d checked by "
                            "an advisor."),
                          name, self->n_tried, (int) self->rows->len, self->n_alone, self->n_shown, self->n_checked);
}

static char *
name_of (SteadStore  *store,
         gint64       person_id,
         GError     **error)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, error);

  if (people == NULL)
    return NULL;
  for (guint i = 0; i < people->len; i++)
    if (((const SteadPerson *) people->pdata[i])->id == person_id)
      return g_strdup (((const SteadPerson *) people->pdata[i])->name);
  g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                       _("There is no such person in the farm. Choose another."));
  return NULL;
}

SteadSkillAnswer *
stead_skill_answer_new (SteadStore  *store,
                        gint64       person_id,
                        GError     **error)
{
  g_autoptr(SteadSkillAnswer) self = g_new0 (SteadSkillAnswer, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->person_id = person_id;
  self->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) row_free);
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL || (self->name = name_of (store, person_id, error)) == NULL
      || !read_list (store, self, error) || !read_tries (store, self, error))
    return NULL;
  drop_idle (self);
  count (self);
  self->sentence = say (self);
  return g_steal_pointer (&self);
}
