/* stead-recipe-step-row.c - one step in the recipe dialog.
 *
 * What a limit of food safety asks for is never typed: the step names its kind and
 * its food.  The recipe can only ask for more.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/make/stead-recipe-step-row.h"

#include "app/make/stead-step-words.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"

#define SECONDS_PER_MINUTE 60

struct _SteadRecipeStepRow
{
  GtkWidget        parent_instance;

  SteadRecipeStep *before;      /* (nullable): as it was shown; what the row has no field for stays */

  SteadField      *text, *minutes, *own, *hold;
  GtkDropDown     *kind, *food;
  GtkWidget       *food_box;
};

enum { REMOVED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadRecipeStepRow, stead_recipe_step_row, GTK_TYPE_WIDGET)

static const char *
chosen_kind (SteadRecipeStepRow *self)
{
  gsize n;
  const SteadStepWord *kinds = stead_step_kinds (&n);
  guint at = gtk_drop_down_get_selected (self->kind);

  return at < n ? kinds[at].word : NULL;
}

static void
fill (GtkDropDown         *drop_down,
      const SteadStepWord *words,
      gsize                n)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  for (gsize i = 0; i < n; i++)
    gtk_string_list_append (names, _(words[i].label));
  gtk_drop_down_set_model (drop_down, G_LIST_MODEL (names));
}

static void
kind_cb (SteadRecipeStepRow *self)
{
  const char *kind = chosen_kind (self);
  gsize n;
  const SteadStepWord *foods = stead_step_foods (kind, &n);

  fill (self->food, foods, n);
  gtk_widget_set_visible (self->food_box, n > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->own), kind != NULL && !g_str_equal (kind, "ph"));
  gtk_widget_set_visible (GTK_WIDGET (self->hold), kind != NULL && stead_step_is_hot (kind));
}

static void
remove_cb (SteadRecipeStepRow *self)
{
  g_signal_emit (self, signals[REMOVED], 0);
}

static void
stead_recipe_step_row_dispose (GObject *object)
{
  SteadRecipeStepRow *self = STEAD_RECIPE_STEP_ROW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_RECIPE_STEP_ROW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->before, stead_recipe_step_free);
  G_OBJECT_CLASS (stead_recipe_step_row_parent_class)->dispose (object);
}

static void
stead_recipe_step_row_class_init (SteadRecipeStepRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_recipe_step_row_dispose;
  signals[REMOVED] = g_signal_new ("removed", STEAD_TYPE_RECIPE_STEP_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("make/stead-recipe-step.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeStepRow, text);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeStepRow, minutes);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeStepRow, own);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeStepRow, hold);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeStepRow, kind);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeStepRow, food);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeStepRow, food_box);
  gtk_widget_class_bind_template_callback (widget_class, kind_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
}

static void
stead_recipe_step_row_init (SteadRecipeStepRow *self)
{
  gsize n;
  const SteadStepWord *kinds = stead_step_kinds (&n);

  gtk_widget_init_template (GTK_WIDGET (self));
  fill (self->kind, kinds, n);
  stead_ui_name_drop_downs (GTK_WIDGET (self));
  kind_cb (self);
}

GtkWidget *
stead_recipe_step_row_new (SteadUnitSystem units)
{
  SteadRecipeStepRow *self = g_object_new (STEAD_TYPE_RECIPE_STEP_ROW, NULL);

  stead_field_set_unit (self->own, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units));
  return GTK_WIDGET (self);
}

static void
choose (GtkDropDown         *drop_down,
        const SteadStepWord *words,
        gsize                n,
        const char          *word)
{
  for (gsize i = 0; i < n; i++)
    if (g_strcmp0 (words[i].word, word) == 0)
      gtk_drop_down_set_selected (drop_down, (guint) i);
}

void
stead_recipe_step_row_show (SteadRecipeStepRow    *self,
                            const SteadRecipeStep *step)
{
  gsize n;
  const SteadStepWord *words = stead_step_kinds (&n);
  double own;

  g_return_if_fail (STEAD_IS_RECIPE_STEP_ROW (self) && step != NULL);

  g_clear_pointer (&self->before, stead_recipe_step_free);
  self->before = g_memdup2 (step, sizeof (SteadRecipeStep));
  self->before->text = g_strdup (step->text);
  self->before->step = g_strdup (step->step);
  self->before->food = g_strdup (step->food);
  choose (self->kind, words, n, step->step);
  words = stead_step_foods (step->step, &n);
  choose (self->food, words, n, step->food);
  stead_field_set_text (self->text, step->text);
  own = stead_step_is_hot (step->step) ? step->least_c : step->most_c;
  if (!isnan (step->minutes))
    stead_field_show_number (self->minutes, step->minutes);
  if (!isnan (own))
    stead_field_show_quantity (self->own, own);
  if (!isnan (step->hold_s))
    stead_field_show_number (self->hold, step->hold_s / SECONDS_PER_MINUTE);
}

static void
read_words (SteadRecipeStepRow *self,
            SteadRecipeStep    *step)
{
  gsize n;
  const SteadStepWord *foods = stead_step_foods (chosen_kind (self), &n);
  guint at = gtk_drop_down_get_selected (self->food);

  step->step = g_strdup (chosen_kind (self));
  step->food = at < n ? g_strdup (foods[at].word) : NULL;
  /* A kind without a choice of foods, such as keeping hot, keeps the one that it has. */
  if (n == 0 && self->before != NULL && g_strcmp0 (step->step, self->before->step) == 0)
    step->food = g_strdup (self->before->food);
  /* A kind that this row cannot show stays as it is in the file. */
  if (step->step == NULL && self->before != NULL && self->before->step != NULL
      && gtk_drop_down_get_selected (self->kind) == 0)
    {
      const SteadStepWord *kinds = stead_step_kinds (&n);

      for (gsize i = 0; i < n; i++)
        if (g_strcmp0 (kinds[i].word, self->before->step) == 0)
          return;
      step->step = g_strdup (self->before->step);
      step->food = g_strdup (self->before->food);
    }
}

SteadRecipeStep *
stead_recipe_step_row_read (SteadRecipeStepRow *self)
{
  g_autoptr(SteadRecipeStep) step = stead_recipe_step_new ();
  const char *text = NULL;
  double own = NAN, hold = NAN;
  gboolean good;

  g_return_val_if_fail (STEAD_IS_RECIPE_STEP_ROW (self), NULL);

  good = stead_field_read_text (self->text, &text);
  good = good && stead_field_read_number (self->minutes, NAN, &step->minutes);
  read_words (self, step);
  if (good && step->step != NULL)
    good = stead_field_read_quantity (self->own, NAN, &own) && stead_field_read_number (self->hold, NAN, &hold);
  if (!good)
    return NULL;
  step->text = g_strdup (text);
  if (self->before != NULL)
    {
      step->least_c = self->before->least_c;
      step->most_c = self->before->most_c;
    }
  if (step->step == NULL || g_str_equal (step->step, "ph"))
    step->least_c = step->most_c = NAN;
  else if (stead_step_is_hot (step->step))
    step->least_c = own;
  else
    step->most_c = own;
  step->hold_s = isnan (hold) ? NAN : hold * SECONDS_PER_MINUTE;
  return g_steal_pointer (&step);
}
