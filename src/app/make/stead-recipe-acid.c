/* stead-recipe-acid.c - acidity and jars of a recipe: what decides how it may be kept. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/make/stead-recipe-acid.h"

#include "app/make/stead-step-words.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"

struct _SteadRecipeAcid
{
  GtkWidget       parent_instance;

  SteadField     *ph, *ph_on, *aw, *authority, *authority_on;
  GtkDropDown    *jar, *process;
  GtkCheckButton *acid_added, *tomato;
};

G_DEFINE_FINAL_TYPE (SteadRecipeAcid, stead_recipe_acid, GTK_TYPE_WIDGET)

/* --- reading -------------------------------------------------------------------------------- */

/* (transfer full) (nullable): NULL if nothing was typed */
static char *
typed (SteadField *field)
{
  return stead_field_is_empty (field) ? NULL : g_strdup (stead_field_get_text (field));
}

static const char *
word_of (GtkDropDown         *drop_down,
         const SteadStepWord *words,
         gsize                n)
{
  guint at = gtk_drop_down_get_selected (drop_down);

  return at < n ? words[at].word : NULL;
}

static gboolean
read_all (SteadRecipeAcid *self,
          SteadRecipe     *recipe)
{
  gboolean good = stead_field_read_number (self->ph, NAN, &recipe->ph);
  gsize n;
  const SteadStepWord *words = stead_jar_words (&n);

  good &= stead_field_read_day (self->ph_on, STEAD_DAY_NONE, &recipe->ph_on);
  good &= stead_field_read_number (self->aw, NAN, &recipe->aw);
  good &= stead_field_read_day (self->authority_on, STEAD_DAY_NONE, &recipe->authority_on);
  if (!good)
    return FALSE;
  g_free (recipe->jar);
  recipe->jar = g_strdup (word_of (self->jar, words, n));
  words = stead_process_words (&n);
  g_free (recipe->process);
  recipe->process = g_strdup (word_of (self->process, words, n));
  g_free (recipe->authority);
  recipe->authority = typed (self->authority);
  recipe->acid_added = gtk_check_button_get_active (self->acid_added);
  recipe->tomato = gtk_check_button_get_active (self->tomato);
  return TRUE;
}

/* What must stand beside each other, told at the field that is wrong. */
static gboolean
is_whole (SteadRecipeAcid   *self,
          const SteadRecipe *recipe)
{
  if (!isnan (recipe->ph) && !(recipe->ph >= 0 && recipe->ph <= 14))
    stead_field_set_error (self->ph, _("A pH lies between 0 and 14. Check the number."));
  else if (!isnan (recipe->ph) && recipe->ph_on == STEAD_DAY_NONE)
    stead_field_set_error (self->ph_on, _("Enter the day on which the pH was measured."));
  else if (!isnan (recipe->aw) && !(recipe->aw >= 0 && recipe->aw <= 1))
    stead_field_set_error (self->aw, _("A water activity lies between 0 and 1. Check the number."));
  else if (recipe->authority != NULL && recipe->authority_on == STEAD_DAY_NONE)
    stead_field_set_error (self->authority_on, _("Enter the day on which the process was approved."));
  else
    return TRUE;
  return FALSE;
}

gboolean
stead_recipe_acid_read (SteadRecipeAcid *self,
                        SteadRecipe     *recipe)
{
  g_return_val_if_fail (STEAD_IS_RECIPE_ACID (self) && recipe != NULL, FALSE);
  return read_all (self, recipe) && is_whole (self, recipe);
}

/* --- showing -------------------------------------------------------------------------------- */

static void
fill_words (GtkDropDown         *drop_down,
            const SteadStepWord *words,
            gsize                n,
            const char          *chosen)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  for (gsize i = 0; i < n; i++)
    gtk_string_list_append (names, _(words[i].label));
  gtk_drop_down_set_model (drop_down, G_LIST_MODEL (names));
  for (gsize i = 0; i < n; i++)
    if (g_strcmp0 (words[i].word, chosen) == 0)
      gtk_drop_down_set_selected (drop_down, (guint) i);
}

static void
show_day (SteadField *field,
          SteadDay    day)
{
  if (day != STEAD_DAY_NONE)
    stead_field_show_day (field, day);
}

static void
show_number (SteadField *field,
             double      number)
{
  if (!isnan (number))
    stead_field_show_number (field, number);
}

void
stead_recipe_acid_show (SteadRecipeAcid   *self,
                        const SteadRecipe *recipe,
                        SteadDay           today)
{
  const SteadStepWord *words;
  gsize n;

  g_return_if_fail (STEAD_IS_RECIPE_ACID (self) && recipe != NULL);

  stead_field_set_today (self->ph_on, today);
  stead_field_set_today (self->authority_on, today);
  stead_field_set_text (self->authority, recipe->authority != NULL ? recipe->authority : "");
  show_number (self->ph, recipe->ph);
  show_number (self->aw, recipe->aw);
  show_day (self->ph_on, recipe->ph_on);
  show_day (self->authority_on, recipe->authority_on);
  gtk_check_button_set_active (self->acid_added, recipe->acid_added);
  gtk_check_button_set_active (self->tomato, recipe->tomato);
  words = stead_jar_words (&n);
  fill_words (self->jar, words, n, recipe->jar);
  words = stead_process_words (&n);
  fill_words (self->process, words, n, recipe->process);
}

/* --- the object ------------------------------------------------------------------------------ */

static void
stead_recipe_acid_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_RECIPE_ACID);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_recipe_acid_parent_class)->dispose (object);
}

static void
stead_recipe_acid_class_init (SteadRecipeAcidClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_recipe_acid_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("make/stead-recipe-acid.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeAcid, ph);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeAcid, ph_on);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeAcid, aw);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeAcid, authority);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeAcid, authority_on);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeAcid, jar);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeAcid, process);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeAcid, acid_added);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeAcid, tomato);
}

static void
stead_recipe_acid_init (SteadRecipeAcid *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
