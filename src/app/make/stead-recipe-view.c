/* stead-recipe-view.c - one recipe: what one costs, what goes in, what is done, what is missing.
 *
 * How much is wanted is only looked at; nothing of it is kept.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/make/stead-recipe-view.h"

#include "answer/stead-kitchen-answer.h"
#include "answer/stead-recipe-answer.h"
#include "answer/stead-words.h"
#include "app/make/stead-cook-dialog.h"
#include "app/make/stead-make-parts.h"
#include "app/make/stead-recipe-dialog.h"
#include "app/make/stead-step-words.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"

struct _SteadRecipeView
{
  GtkWidget    parent_instance;

  SteadDesk   *desk;
  gint64       recipe_id;
  double       wanted_base;    /* 0: what the recipe makes */
  double       whole_base;     /* at which the pieces come out whole */
  double       makes_base;     /* of what is on hand */
  gboolean     quiet;

  GtkLabel    *title, *sentence, *caution, *stock, *allergens, *food, *more;
  SteadField  *wanted;
  SteadWhyBox *whys;
  GtkWidget   *buttons, *cook, *scales, *lines, *steps, *notes, *steps_card, *food_card;
};

G_DEFINE_FINAL_TYPE (SteadRecipeView, stead_recipe_view, GTK_TYPE_WIDGET)

/* --- ingredients ------------------------------------------------------------------------ */

static void
attach (SteadRecipeView *self,
        int              column,
        int              row,
        GtkWidget       *child)
{
  gtk_widget_set_valign (child, GTK_ALIGN_BASELINE);
  gtk_grid_attach (GTK_GRID (self->lines), child, column, row, 1, 1);
}

static void
show_heads (SteadRecipeView *self)
{
  GtkWidget *name = stead_make_label (_("Ingredient"), "heading");

  gtk_widget_set_hexpand (name, TRUE);
  attach (self, 0, 0, stead_make_figure (_("Amount"), "heading"));
  attach (self, 1, 0, name);
  attach (self, 2, 0, stead_make_figure (_("As bought"), "heading"));
  attach (self, 3, 0, stead_make_figure (_("Costs"), "heading"));
  attach (self, 4, 0, stead_make_figure (_("Share"), "heading"));
}

/* "Onion, diced" with what was rounded and which recipe it belongs to in a second line. */
static GtkWidget *
name_cell (const SteadRecipeLine *line)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  /* Translators: an ingredient and how it is prepared: "Onion, diced". */
  g_autofree char *name = line->note != NULL && *line->note != '\0' ? g_strdup_printf (C_("ingredient", "%s, %s"), line->name, line->note)
                                            : g_strdup (line->name);

  gtk_box_append (GTK_BOX (box), stead_make_label (name, NULL));
  if (line->inside != NULL)
    {
      /* Translators: another recipe that an ingredient is part of. */
      g_autofree char *inside = g_strdup_printf (_("for “%s”"), line->inside);

      gtk_box_append (GTK_BOX (box), stead_make_label (inside, "soft"));
    }
  if (line->rounding != NULL)
    {
      GtkWidget *label = stead_make_label (line->rounding, "soft");

      gtk_widget_add_css_class (label, "small");
      gtk_box_append (GTK_BOX (box), label);
    }
  return box;
}

static void
show_line (SteadRecipeView         *self,
           const SteadRecipeAnswer *answer,
           const SteadRecipeLine   *line,
           int                      row)
{
  gboolean priced = !isnan (line->unit_cents);
  g_autofree char *cost = priced ? stead_money_format (line->cents, answer->farm->currency) : g_strdup (_("not known"));
  g_autofree char *share = priced && !isnan (line->share_frac) ? stead_words_percent (line->share_frac, 0) : g_strdup ("");
  gboolean dearest = line == answer->dearest;

  attach (self, 0, row, stead_make_figure (line->amount, "strong"));
  attach (self, 1, row, name_cell (line));
  attach (self, 2, row, stead_make_figure (line->bought, "soft"));
  attach (self, 3, row, stead_make_figure (cost, priced ? dearest ? "strong" : NULL : "warn"));
  attach (self, 4, row, stead_make_figure (share, dearest ? "strong" : "soft"));
}

static void
show_total (SteadRecipeView         *self,
            const SteadRecipeAnswer *answer,
            int                      row)
{
  g_autofree char *cost = stead_money_format (answer->cents, answer->farm->currency);
  g_autofree char *amount = stead_recipe_amount (answer->wanted_base, answer->recipe->unit, answer->recipe->item_name);
  /* Translators: all ingredients together, for an amount of what is made: "For 25". */
  g_autofree char *text = g_strdup_printf (_("For %s"), amount);
  GtkWidget *name = stead_make_label (text, "total");
  GtkWidget *sum = stead_make_figure (cost, "total");

  gtk_grid_attach (GTK_GRID (self->lines), name, 0, row, 3, 1);
  gtk_grid_attach (GTK_GRID (self->lines), sum, 3, row, 1, 1);
}

static void
show_lines (SteadRecipeView         *self,
            const SteadRecipeAnswer *answer)
{
  stead_make_clear (self->lines);
  show_heads (self);
  for (guint i = 0; i < answer->lines->len; i++)
    show_line (self, answer, answer->lines->pdata[i], (int) i + 1);
  show_total (self, answer, (int) answer->lines->len + 1);
}

/* --- scaling ------------------------------------------------------------------------------ */

static void scale_to (SteadRecipeView *self, double base);

static void
whole_cb (SteadRecipeView *self)
{
  scale_to (self, self->whole_base);
}

static void
on_hand_cb (SteadRecipeView *self)
{
  scale_to (self, self->makes_base);
}

static void
once_cb (SteadRecipeView *self)
{
  scale_to (self, 0);
}

static void
offer (SteadRecipeView *self,
       const char      *text,
       GCallback        pressed)
{
  gtk_box_append (GTK_BOX (self->scales), stead_make_link (text, text, pressed, self));
}

static void
show_scales (SteadRecipeView         *self,
             const SteadRecipeAnswer *answer)
{
  const SteadUnit *unit = answer->recipe->unit;
  gboolean pieces = unit->dimension == STEAD_DIMENSION_COUNT;

  stead_make_clear (self->scales);
  self->whole_base = isnan (answer->whole_factor) ? NAN : answer->whole_factor * answer->recipe->yield_base;
  self->makes_base = pieces ? floor (answer->makes_base + 1e-6) : answer->makes_base;
  if (fabs (answer->factor - 1) > 1e-9)
    offer (self, _("As the recipe has it"), G_CALLBACK (once_cb));
  if (fabs (self->whole_base - answer->wanted_base) > 1e-6 * answer->wanted_base
      && (!pieces || fabs (self->whole_base - round (self->whole_base)) < 1e-6))
    offer (self, _("So that pieces come out whole"), G_CALLBACK (whole_cb));
  if (self->makes_base > 0 && fabs (self->makes_base - answer->wanted_base) > 1e-6)
    offer (self, _("As much as the store room allows"), G_CALLBACK (on_hand_cb));
}

/* --- steps, food ---------------------------------------------------------------------------- */

static void
add_limit (GtkWidget          *box,
           const SteadRunLine *line)
{
  if (line->limit != NULL)
    {
      /* Translators: a limit of food safety: "at least 155 °F for 17 s". */
      g_autofree char *limit = g_strdup_printf (_("Limit: %s"), line->limit);

      gtk_box_append (GTK_BOX (box), stead_make_label (limit, "strong"));
    }
  if (line->own != NULL)
    {
      /* Translators: a limit that the recipe itself asks for. */
      g_autofree char *own = g_strdup_printf (_("This recipe asks for %s"), line->own);

      gtk_box_append (GTK_BOX (box), stead_make_label (own, "strong"));
    }
  if (line->source != NULL)
    {
      GtkWidget *source = stead_make_label (line->source, "soft");

      gtk_widget_add_css_class (source, "small");
      gtk_box_append (GTK_BOX (box), source);
    }
}

static GtkWidget *
step_row (const SteadRecipeStep *step,
          int                    number,
          SteadUnitSystem        units)
{
  SteadRunLine *line = stead_run_line_of_recipe (step, number, units);
  g_autofree char *count = g_strdup_printf ("%d", number);
  g_autofree char *minutes = isnan (step->minutes) ? NULL : stead_number_format (step->minutes, 1);
  g_autofree char *time = minutes != NULL ? g_strdup_printf (_("%s min"), minutes) : NULL;
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *figure = stead_make_figure (count, "heading");

  gtk_label_set_width_chars (GTK_LABEL (figure), 2);
  gtk_widget_set_valign (figure, GTK_ALIGN_START);
  gtk_widget_set_hexpand (box, TRUE);
  gtk_box_append (GTK_BOX (box), stead_make_label (step->text, NULL));
  add_limit (box, line);
  stead_run_line_free (line);
  gtk_box_append (GTK_BOX (row), figure);
  gtk_box_append (GTK_BOX (row), box);
  if (time != NULL)
    {
      GtkWidget *label = stead_make_figure (time, "soft");

      gtk_widget_set_valign (label, GTK_ALIGN_START);
      gtk_box_append (GTK_BOX (row), label);
    }
  return row;
}

static void
show_steps (SteadRecipeView         *self,
            const SteadRecipeAnswer *answer)
{
  stead_make_clear (self->steps);
  for (guint i = 0; i < answer->recipe->steps->len; i++)
    gtk_box_append (GTK_BOX (self->steps), step_row (answer->recipe->steps->pdata[i], (int) i + 1, answer->farm->units));
  gtk_widget_set_visible (self->steps_card, answer->recipe->steps->len > 0);
}

/* @sentence: (transfer full) */
static void
add_sentence (GString *text,
              char    *sentence)
{
  if (text->len > 0)
    g_string_append_c (text, ' ');
  g_string_append (text, sentence);
  g_free (sentence);
}

static void
show_food (SteadRecipeView         *self,
           const SteadRecipeAnswer *answer)
{
  const SteadSauceAnswer *sauce = answer->sauce;

  gtk_widget_set_visible (self->food_card, sauce != NULL);
  stead_make_clear (self->notes);
  if (sauce == NULL)
    return;
  stead_make_say (self->food, sauce->sentence, FALSE);
  for (guint i = 0; i < sauce->notes->len; i++)
    gtk_box_append (GTK_BOX (self->notes), stead_make_label (sauce->notes->pdata[i], NULL));
  gtk_widget_set_visible (self->notes, sauce->notes->len > 0);
}

static void
show_more (SteadRecipeView         *self,
           const SteadRecipeAnswer *answer)
{
  const SteadRecipe *recipe = answer->recipe;
  GString *text = g_string_new (NULL);

  if (recipe->equipment != NULL && *recipe->equipment != '\0')
    /* Translators: the tools of a recipe follow. */
    add_sentence (text, g_strdup_printf (_("Equipment: %s."), recipe->equipment));
  if (recipe->note != NULL)
    add_sentence (text, g_strdup (recipe->note));
  stead_make_say (self->more, text->str, FALSE);
  g_string_free (text, TRUE);
}

/* --- all of it -------------------------------------------------------------------------------- */

static void
show_answer (SteadRecipeView         *self,
             const SteadRecipeAnswer *answer)
{
  g_autoptr(GPtrArray) whys = stead_recipe_answer_whys (answer);

  gtk_label_set_text (self->title, answer->recipe->name);
  gtk_widget_set_visible (self->cook, answer->recipe->retired_on == STEAD_DAY_NONE);
  stead_make_say (self->sentence, answer->sentence, TRUE);
  stead_make_say (self->caution, answer->caution, FALSE);
  stead_make_say (self->stock, answer->stock_text, TRUE);
  stead_make_say (self->allergens, answer->allergen_text, FALSE);
  show_lines (self, answer);
  show_scales (self, answer);
  show_steps (self, answer);
  show_food (self, answer);
  show_more (self, answer);
  stead_why_box_set (self->whys, whys);
}

static void
fill_wanted (SteadRecipeView         *self,
             const SteadRecipeAnswer *answer)
{
  gboolean pieces = answer->recipe->unit->dimension == STEAD_DIMENSION_COUNT;

  self->quiet = TRUE;
  g_object_set (self->wanted, "label", pieces ? _("How many to make") : _("How much to make"), NULL);
  stead_field_set_unit (self->wanted, g_str_equal (answer->recipe->unit->id, "ea") ? NULL : answer->recipe->unit);
  stead_field_show_quantity (self->wanted, answer->wanted_base);
  self->quiet = FALSE;
}

static void
refresh (SteadRecipeView *self,
         gboolean         fill)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadRecipeAnswer) answer = stead_recipe_answer_new (stead_desk_get_store (self->desk), self->recipe_id,
                                                                 self->wanted_base, &error);

  gtk_widget_set_sensitive (self->buttons, answer != NULL);
  if (answer == NULL)
    {
      gtk_label_set_text (self->sentence, error->message);
      return;
    }
  show_answer (self, answer);
  if (fill)
    fill_wanted (self, answer);
}

static void
scale_to (SteadRecipeView *self,
          double           base)
{
  self->wanted_base = base;
  stead_field_set_error (self->wanted, NULL);
  refresh (self, TRUE);
  gtk_widget_child_focus (GTK_WIDGET (self->wanted), GTK_DIR_TAB_FORWARD);
}

/* Each key counts; what is no amount yet changes nothing. */
static void
wanted_cb (SteadRecipeView *self)
{
  g_autoptr(SteadRecipe) recipe = NULL;
  double base;

  if (self->quiet || self->desk == NULL)
    return;
  recipe = stead_recipe_repo_get (stead_desk_get_store (self->desk), self->recipe_id, NULL);
  if (recipe == NULL || !stead_make_peek (stead_field_get_text (self->wanted), recipe->unit, &base) || !(base > 0))
    return;
  self->wanted_base = base;
  refresh (self, FALSE);
}

static void
edit_cb (SteadRecipeView *self)
{
  stead_recipe_dialog_show (GTK_WIDGET (self), self->desk, self->recipe_id);
}

static void
cook_cb (SteadRecipeView *self)
{
  stead_cook_dialog_show_new (GTK_WIDGET (self), self->desk, self->recipe_id, self->wanted_base);
}

static void
stead_recipe_view_dispose (GObject *object)
{
  SteadRecipeView *self = STEAD_RECIPE_VIEW (object);

  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_RECIPE_VIEW);
  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_recipe_view_parent_class)->dispose (object);
}

static void
stead_recipe_view_class_init (SteadRecipeViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_WHY_BOX);
  G_OBJECT_CLASS (klass)->dispose = stead_recipe_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("make/stead-recipe-view.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, title);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, caution);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, stock);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, allergens);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, food);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, more);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, wanted);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, buttons);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, cook);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, scales);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, lines);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, steps);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, notes);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, steps_card);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, food_card);
  gtk_widget_class_bind_template_child (widget_class, SteadRecipeView, whys);
  gtk_widget_class_bind_template_callback (widget_class, cook_cb);
  gtk_widget_class_bind_template_callback (widget_class, edit_cb);
  gtk_widget_class_bind_template_callback (widget_class, wanted_cb);
}

static void
stead_recipe_view_init (SteadRecipeView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_recipe_view_show (SteadRecipeView *self,
                        SteadDesk       *desk,
                        gint64           recipe_id)
{
  gboolean other;

  g_return_if_fail (STEAD_IS_RECIPE_VIEW (self));

  other = recipe_id != self->recipe_id || self->wanted_base <= 0;
  g_set_object (&self->desk, desk);
  if (recipe_id != self->recipe_id)
    self->wanted_base = 0;
  self->recipe_id = recipe_id;
  refresh (self, other);
}
