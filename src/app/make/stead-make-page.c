/* stead-make-page.c - the place Make: recipes, and what is cooked from them.
 *
 * Left a list, right the chosen one.  Only the side that can be seen reads the farm.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/make/stead-make-page.h"

#include "answer/stead-recipe-list.h"
#include "app/make/stead-cook-dialog.h"
#include "app/make/stead-kitchen-view.h"
#include "app/make/stead-make-parts.h"
#include "app/make/stead-recipe-dialog.h"
#include "app/make/stead-recipe-view.h"
#include "app/stead-chips.h"
#include "app/stead-ui.h"
#include "store/stead-kitchen-repo.h"

struct _SteadMakePage
{
  SteadPage        parent_instance;

  gint64           recipe_id;   /* shown; 0: none */
  gint64           batch_id;    /* likewise, of a kitchen batch */
  gboolean         quiet;       /* the code fills the list, not the person */

  SteadChips      *chips;
  GtkStack        *stack;
  GtkWidget       *add, *plan;
  GtkSearchEntry  *search;
  GtkListBox      *recipes;
  SteadRecipeView *recipe;
  GtkListBox      *kitchens;
  SteadKitchenView *kitchen;
};

G_DEFINE_FINAL_TYPE (SteadMakePage, stead_make_page, STEAD_TYPE_PAGE)

/* In the order of the chips; chip ids count from 1. */
enum { RECIPES = 1, KITCHENS };

/* --- recipes ------------------------------------------------------------------------ */

static gboolean
is_found (GtkListBoxRow *row,
          gpointer       data)
{
  SteadMakePage *self = data;
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->search));
  GtkWidget *title = gtk_widget_get_first_child (gtk_list_box_row_get_child (row));

  return *text == '\0' || g_str_match_string (text, gtk_label_get_text (GTK_LABEL (title)), TRUE);
}

static void
search_cb (SteadMakePage *self)
{
  gtk_list_box_invalidate_filter (self->recipes);
}

static char *
cost_text (const SteadRecipeCost *cost)
{
  if (cost->recipe->retired_on != STEAD_DAY_NONE)
    return g_strdup (_("no longer made"));
  if (!cost->all_priced)
    /* Translators: what one of it costs as far as it is known: "$1.06, without what has no price". */
    return g_strdup_printf (_("%s, some prices are missing"), cost->cost);
  if (cost->recipe->unit->dimension != STEAD_DIMENSION_COUNT)
    /* Translators: what one unit of it costs: "$2.10 for 1 qt" */
    return g_strdup_printf (_("%s for 1 %s"), cost->cost, stead_unit_symbol (cost->recipe->unit));
  /* Translators: what one piece of it costs */
  return g_strdup_printf (_("%s for one"), cost->cost);
}

static void
fill_recipes (SteadMakePage *self,
              GPtrArray     *costs)
{
  GtkListBoxRow *chosen = NULL;

  self->quiet = TRUE;
  stead_make_clear (GTK_WIDGET (self->recipes));
  for (guint i = 0; i < costs->len; i++)
    {
      const SteadRecipeCost *cost = costs->pdata[i];
      g_autofree char *text = cost_text (cost);
      GtkWidget *row = stead_make_row (cost->recipe->id, cost->recipe->name, text);

      gtk_list_box_append (self->recipes, row);
      if (chosen == NULL || cost->recipe->id == self->recipe_id)
        chosen = GTK_LIST_BOX_ROW (row);
    }
  self->recipe_id = chosen != NULL ? stead_make_row_id (GTK_WIDGET (chosen)) : 0;
  gtk_list_box_select_row (self->recipes, chosen);
  self->quiet = FALSE;
}

static void
row_cb (SteadMakePage *self,
        GtkListBoxRow *row)
{
  if (self->quiet || row == NULL)
    return;
  self->recipe_id = stead_make_row_id (GTK_WIDGET (row));
  stead_recipe_view_show (self->recipe, stead_page_get_desk (STEAD_PAGE (self)), self->recipe_id);
}

static void
refresh_recipes (SteadMakePage *self)
{
  SteadDesk *desk = stead_page_get_desk (STEAD_PAGE (self));
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) costs = stead_recipe_list_new (stead_desk_get_store (desk), TRUE, &error);

  if (costs == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  fill_recipes (self, costs);
  gtk_widget_set_visible (self->add, costs->len > 0);
  gtk_widget_hide (self->plan);
  gtk_stack_set_visible_child_name (self->stack, costs->len > 0 ? "recipes" : "empty");
  if (self->recipe_id != 0)
    stead_recipe_view_show (self->recipe, desk, self->recipe_id);
}

static void
new_cb (SteadMakePage *self)
{
  stead_recipe_dialog_show (GTK_WIDGET (self), stead_page_get_desk (STEAD_PAGE (self)), 0);
}

/* --- kitchen batches ---------------------------------------------------------------- */

static char *
kitchen_text (const SteadKitchen *kitchen,
              SteadDay            today)
{
  g_autofree char *amount = stead_quantity_format (kitchen->wanted_base, kitchen->item_unit);
  SteadDay on = kitchen->batch.ended_on != STEAD_DAY_NONE ? kitchen->batch.ended_on : kitchen->batch.started_on;
  g_autofree char *day = stead_day_format (on, STEAD_DAY_STYLE_SHORT);

  if (kitchen->batch.ended_on != STEAD_DAY_NONE)
    /* Translators: a day */
    return g_strdup_printf (_("finished on %s"), day);
  if (on > today)
    /* Translators: a day, an amount: "planned for Mar 3: 24" */
    return g_strdup_printf (_("planned for %s: %s"), day, amount);
  /* Translators: a day, an amount */
  return g_strdup_printf (_("in the kitchen since %s: %s"), day, amount);
}

static void
fill_kitchens (SteadMakePage *self,
               GPtrArray     *kitchens)
{
  SteadDay today = stead_store_get_today (stead_page_get_store (STEAD_PAGE (self)));
  GtkListBoxRow *chosen = NULL;

  self->quiet = TRUE;
  stead_make_clear (GTK_WIDGET (self->kitchens));
  for (guint i = 0; i < kitchens->len; i++)
    {
      const SteadKitchen *kitchen = kitchens->pdata[i];
      g_autofree char *text = kitchen_text (kitchen, today);
      GtkWidget *row = stead_make_row (kitchen->batch.id, kitchen->batch.name, text);

      gtk_list_box_append (self->kitchens, row);
      if (chosen == NULL || kitchen->batch.id == self->batch_id)
        chosen = GTK_LIST_BOX_ROW (row);
    }
  self->batch_id = chosen != NULL ? stead_make_row_id (GTK_WIDGET (chosen)) : 0;
  gtk_list_box_select_row (self->kitchens, chosen);
  self->quiet = FALSE;
}

static void
kitchen_row_cb (SteadMakePage *self,
                GtkListBoxRow *row)
{
  if (self->quiet || row == NULL)
    return;
  self->batch_id = stead_make_row_id (GTK_WIDGET (row));
  stead_kitchen_view_show (self->kitchen, stead_page_get_desk (STEAD_PAGE (self)), self->batch_id);
}

static void
refresh_kitchens (SteadMakePage *self)
{
  SteadDesk *desk = stead_page_get_desk (STEAD_PAGE (self));
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) kitchens = stead_kitchen_repo_list (stead_desk_get_store (desk), TRUE, &error);

  if (kitchens == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  fill_kitchens (self, kitchens);
  gtk_widget_hide (self->add);
  gtk_widget_set_visible (self->plan, kitchens->len > 0);
  gtk_stack_set_visible_child_name (self->stack, kitchens->len > 0 ? "kitchens" : "no-kitchens");
  if (self->batch_id != 0)
    stead_kitchen_view_show (self->kitchen, desk, self->batch_id);
}

static void
plan_cb (SteadMakePage *self)
{
  stead_cook_dialog_show_new (GTK_WIDGET (self), stead_page_get_desk (STEAD_PAGE (self)), 0, 0);
}

/* --- the page ------------------------------------------------------------------------- */

static void
stead_make_page_refresh (SteadPage *page)
{
  SteadMakePage *self = STEAD_MAKE_PAGE (page);

  if (stead_chips_get (self->chips) == KITCHENS)
    refresh_kitchens (self);
  else
    refresh_recipes (self);
}

static void
chosen_cb (SteadMakePage *self,
           gint64         view)
{
  stead_page_invalidate (STEAD_PAGE (self));
}

static void
stead_make_page_show (SteadPage  *page,
                      SteadTarget target,
                      gint64      id)
{
  SteadMakePage *self = STEAD_MAKE_PAGE (page);

  if (target == STEAD_TARGET_RECIPE && id == 0)
    new_cb (self);
  else if (target == STEAD_TARGET_RECIPE)
    self->recipe_id = id;
  else if (target == STEAD_TARGET_KITCHEN && id == 0)
    plan_cb (self);
  else if (target == STEAD_TARGET_KITCHEN)
    self->batch_id = id;
  else
    return;
  stead_chips_choose (self->chips, target == STEAD_TARGET_KITCHEN ? KITCHENS : RECIPES);
  stead_page_invalidate (page);
}

static void
stead_make_page_dispose (GObject *object)
{
  SteadMakePage *self = STEAD_MAKE_PAGE (object);

  self->quiet = TRUE;
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_MAKE_PAGE);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_make_page_parent_class)->dispose (object);
}

static void
stead_make_page_class_init (SteadMakePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_CHIPS);
  g_type_ensure (STEAD_TYPE_KITCHEN_VIEW);
  g_type_ensure (STEAD_TYPE_RECIPE_VIEW);
  G_OBJECT_CLASS (klass)->dispose = stead_make_page_dispose;
  STEAD_PAGE_CLASS (klass)->refresh = stead_make_page_refresh;
  STEAD_PAGE_CLASS (klass)->show = stead_make_page_show;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("make/stead-make-page.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadMakePage, chips);
  gtk_widget_class_bind_template_child (widget_class, SteadMakePage, stack);
  gtk_widget_class_bind_template_child (widget_class, SteadMakePage, add);
  gtk_widget_class_bind_template_child (widget_class, SteadMakePage, search);
  gtk_widget_class_bind_template_child (widget_class, SteadMakePage, recipes);
  gtk_widget_class_bind_template_child (widget_class, SteadMakePage, recipe);
  gtk_widget_class_bind_template_child (widget_class, SteadMakePage, kitchen);
  gtk_widget_class_bind_template_child (widget_class, SteadMakePage, kitchens);
  gtk_widget_class_bind_template_child (widget_class, SteadMakePage, plan);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, new_cb);
  gtk_widget_class_bind_template_callback (widget_class, kitchen_row_cb);
  gtk_widget_class_bind_template_callback (widget_class, plan_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_cb);
}

static void
stead_make_page_init (SteadMakePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_hush_stack (self->stack);
  stead_chips_append (self->chips, RECIPES, _("Recipes"));
  stead_chips_append (self->chips, KITCHENS, _("Kitchen batches"));
  stead_chips_choose (self->chips, RECIPES);
  gtk_list_box_set_filter_func (self->recipes, is_found, self, NULL);
}

GtkWidget *
stead_make_page_new (SteadDesk *desk)
{
  return g_object_new (STEAD_TYPE_MAKE_PAGE, "desk", desk, NULL);
}
