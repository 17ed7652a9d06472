/* stead-cook-dialog.c - a kitchen batch is planned from a recipe, or its plan is changed.
 *
 * Another amount copies the recipe anew; the repository refuses it once the batch is
 * under way, and then its parts are changed one by one.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/make/stead-cook-dialog.h"

#include "answer/stead-recipe-answer.h"
#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "store/stead-kitchen-repo.h"

struct _SteadCookDialog
{
  SteadDialog   parent_instance;

  SteadKitchen *kitchen;       /* (nullable): NULL: a new one */
  GPtrArray    *recipes;       /* of SteadRecipe: in use */
  GPtrArray    *people;        /* of SteadPerson */
  GPtrArray    *checks;        /* of GtkCheckButton, as the people; not owned */
  double        on_hand_base;  /* what the store room allows; NAN */

  SteadPick    *recipe;
  SteadField   *wanted, *day, *name, *minutes, *note;
  GtkWidget    *all, *people_box, *names;
  GtkLabel     *stock;
  SteadWhyBox  *whys;
};

G_DEFINE_FINAL_TYPE (SteadCookDialog, stead_cook_dialog, STEAD_TYPE_DIALOG)

static const SteadRecipe *
chosen_recipe (SteadCookDialog *self)
{
  gint64 id = stead_pick_get (self->recipe);

  for (guint i = 0; i < self->recipes->len; i++)
    if (((SteadRecipe *) self->recipes->pdata[i])->id == id)
      return self->recipes->pdata[i];
  return NULL;
}

/* --- how much ------------------------------------------------------------------------- */

static gboolean
is_counted (const SteadRecipe *recipe)
{
  return recipe->unit->dimension == STEAD_DIMENSION_COUNT;
}

static void
show_stock (SteadCookDialog *self)
{
  const SteadRecipe *recipe = chosen_recipe (self);
  SteadStore *store = stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self)));
  g_autoptr(SteadRecipeAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  double wanted = 0;

  if (recipe != NULL && !stead_make_peek (stead_field_get_text (self->wanted), recipe->unit, &wanted))
    wanted = 0;
  answer = recipe != NULL ? stead_recipe_answer_new (store, recipe->id, wanted, NULL) : NULL;
  stead_make_say (self->stock, answer != NULL ? answer->stock_text : NULL, TRUE);
  whys = answer != NULL ? stead_recipe_answer_stock_whys (answer) : g_ptr_array_new ();
  stead_why_box_set (self->whys, whys);
  self->on_hand_base = answer == NULL ? NAN : is_counted (recipe) ? floor (answer->makes_base + 1e-6) : answer->makes_base;
  gtk_widget_set_visible (self->all, self->on_hand_base > 0);
}

static void
typed_cb (SteadCookDialog *self)
{
  if (self->recipes != NULL)
    show_stock (self);
}

static void
all_cb (SteadCookDialog *self)
{
  stead_field_show_quantity (self->wanted, self->on_hand_base);
}

static void
show_wanted (SteadCookDialog *self,
             double           base)
{
  const SteadRecipe *recipe = chosen_recipe (self);

  if (recipe == NULL)
    return;
  g_object_set (self->wanted, "label", is_counted (recipe) ? _("How many are wanted") : _("How much is wanted"), NULL);
  stead_field_set_unit (self->wanted, g_str_equal (recipe->unit->id, "ea") ? NULL : recipe->unit);
  stead_field_show_quantity (self->wanted, base > 0 ? base : recipe->yield_base);
}

static void
recipe_cb (SteadCookDialog *self)
{
  show_wanted (self, 0);
  show_stock (self);
}

/* --- reading and saving --------------------------------------------------------------- */

typedef struct
{
  SteadCookDialog *self;
  gint64           batch_id;
  gint64           recipe_id;
  double           wanted_base;
  SteadDay         day;
  double           minutes;
  char            *name, *note;   /* (nullable) */
} Plan;

static void
plan_clear (Plan *plan)
{
  g_free (plan->name);
  g_free (plan->note);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Plan, plan_clear)

static char *
typed (SteadField *field)
{
  return stead_field_is_empty (field) ? NULL : g_strstrip (g_strdup (stead_field_get_text (field)));
}

static gboolean
read_plan (SteadCookDialog *self,
           Plan            *plan)
{
  const SteadRecipe *recipe = chosen_recipe (self);
  gboolean good = stead_field_read_quantity (self->wanted, 0, &plan->wanted_base);

  good &= stead_field_read_day (self->day, STEAD_DAY_NONE, &plan->day);
  good &= stead_field_read_number (self->minutes, NAN, &plan->minutes);
  if (!good || recipe == NULL)
    return FALSE;
  if (!(plan->wanted_base > 0))
    {
      stead_field_set_error (self->wanted, _("Enter more than zero."));
      return FALSE;
    }
  if (g_str_equal (recipe->unit->id, "ea") && fabs (plan->wanted_base - round (plan->wanted_base)) > 1e-6)
    {
      stead_field_set_error (self->wanted, _("Enter a whole number."));
      return FALSE;
    }
  if (plan->minutes < 0)
    {
      stead_field_set_error (self->minutes, _("Enter zero minutes or more."));
      return FALSE;
    }
  plan->recipe_id = recipe->id;
  plan->name = typed (self->name);
  plan->note = typed (self->note);
  return TRUE;
}

static gboolean
set_people (SteadStore  *store,
            Plan        *plan,
            GError     **error)
{
  SteadCookDialog *self = plan->self;

  for (guint i = 0; i < self->checks->len; i++)
    if (gtk_check_button_get_active (self->checks->pdata[i])
        && !stead_kitchen_repo_set_person (store, plan->batch_id, ((SteadPerson *) self->people->pdata[i])->id, 0, error))
      return FALSE;
  return TRUE;
}

static gboolean
plan_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  Plan *plan = data;

  return stead_kitchen_repo_plan (store, plan->recipe_id, plan->wanted_base, plan->day, plan->name, 0, &plan->batch_id,
                                  error)
         && set_people (store, plan, error);
}

static gboolean
change_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  Plan *plan = data;
  g_autoptr(SteadKitchen) kitchen = stead_kitchen_repo_get (store, plan->batch_id, error);

  if (kitchen == NULL)
    return FALSE;
  if (fabs (plan->wanted_base - kitchen->wanted_base) > 1e-9 * kitchen->wanted_base)
    {
      g_clear_pointer (&kitchen, stead_kitchen_free);
      if (!stead_kitchen_repo_replan (store, plan->batch_id, plan->wanted_base, error))
        return FALSE;
      kitchen = stead_kitchen_repo_get (store, plan->batch_id, error);
      if (kitchen == NULL)
        return FALSE;
    }
  kitchen->batch.started_on = plan->day;
  if (!isnan (plan->minutes))
    kitchen->minutes = plan->minutes;
  if (plan->name != NULL)
    {
      g_free (kitchen->batch.name);
      kitchen->batch.name = g_strdup (plan->name);
    }
  g_free (kitchen->batch.note);
  kitchen->batch.note = g_strdup (plan->note);
  return stead_kitchen_repo_save (store, kitchen, error);
}

static gboolean
stead_cook_dialog_save (SteadDialog *dialog,
                        GError     **error)
{
  SteadCookDialog *self = STEAD_COOK_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  g_auto(Plan) plan = { .self = self, .batch_id = self->kitchen != NULL ? self->kitchen->batch.id : 0 };
  g_autofree char *step = NULL;

  if (!read_plan (self, &plan))
    return FALSE;
  /* Translators: a step that can be undone: the plan of a kitchen batch; its recipe or its name follows. */
  step = g_strdup_printf (self->kitchen == NULL ? _("the kitchen batch of “%s”") : _("changes of the kitchen batch “%s”"),
                          self->kitchen == NULL ? chosen_recipe (self)->name : self->kitchen->batch.name);
  if (!stead_desk_act (desk, step, self->kitchen == NULL ? plan_act : change_act, &plan, error))
    return FALSE;
  stead_desk_jump (desk, STEAD_TARGET_KITCHEN, plan.batch_id);
  return TRUE;
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_kitchen_repo_delete (store, ((SteadKitchen *) data)->batch.id, error);
}

static gboolean
stead_cook_dialog_remove (SteadDialog *dialog,
                          GError     **error)
{
  SteadCookDialog *self = STEAD_COOK_DIALOG (dialog);
  /* Translators: the name of a kitchen batch follows */
  g_autofree char *step = g_strdup_printf (_("deleting the kitchen batch “%s”"), self->kitchen->batch.name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->kitchen, error);
}

/* --- the object -------------------------------------------------------------------------- */

static void
stead_cook_dialog_dispose (GObject *object)
{
  SteadCookDialog *self = STEAD_COOK_DIALOG (object);

  g_clear_pointer (&self->recipes, g_ptr_array_unref);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_COOK_DIALOG);
  g_clear_pointer (&self->people, g_ptr_array_unref);
  g_clear_pointer (&self->checks, g_ptr_array_unref);
  g_clear_pointer (&self->kitchen, stead_kitchen_free);
  G_OBJECT_CLASS (stead_cook_dialog_parent_class)->dispose (object);
}

static void
stead_cook_dialog_class_init (SteadCookDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_cook_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_cook_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_cook_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("make/stead-cook-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadCookDialog, recipe);
  gtk_widget_class_bind_template_child (widget_class, SteadCookDialog, wanted);
  gtk_widget_class_bind_template_child (widget_class, SteadCookDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadCookDialog, name);
  gtk_widget_class_bind_template_child (widget_class, SteadCookDialog, minutes);
  gtk_widget_class_bind_template_child (widget_class, SteadCookDialog, note);
  gtk_widget_class_bind_template_child (widget_class, SteadCookDialog, all);
  gtk_widget_class_bind_template_child (widget_class, SteadCookDialog, people_box);
  gtk_widget_class_bind_template_child (widget_class, SteadCookDialog, names);
  gtk_widget_class_bind_template_child (widget_class, SteadCookDialog, stock);
  gtk_widget_class_bind_template_callback (widget_class, all_cb);
  gtk_widget_class_bind_template_callback (widget_class, recipe_cb);
  gtk_widget_class_bind_template_callback (widget_class, typed_cb);
}

static void
stead_cook_dialog_init (SteadCookDialog *self)
{
  self->checks = g_ptr_array_new ();
  self->on_hand_base = NAN;
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_box_append (GTK_BOX (gtk_widget_get_parent (GTK_WIDGET (self->stock))), stead_why_box_new_folded (&self->whys));
}

/* --- opening ------------------------------------------------------------------------------ */

static void
fill_people (SteadCookDialog *self,
             SteadStore      *store)
{
  g_autoptr(GPtrArray) all = stead_person_repo_list (store, NULL);

  self->people = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_person_free);
  for (guint i = 0; all != NULL && i < all->len; i++)
    {
      SteadPerson *person = all->pdata[i];
      GtkWidget *check;

      if (person->left_on != STEAD_DAY_NONE)
        continue;
      check = gtk_check_button_new_with_label (person->name);
      stead_ui_name (check, person->name);
      gtk_box_append (GTK_BOX (self->names), check);
      g_ptr_array_add (self->checks, check);
      g_ptr_array_add (self->people, g_steal_pointer (&all->pdata[i]));
    }
  gtk_widget_set_visible (self->people_box, self->checks->len > 0);
}

static void
fill_recipes (SteadCookDialog *self,
              gint64           chosen)
{
  for (guint i = 0; i < self->recipes->len; i++)
    {
      const SteadRecipe *recipe = self->recipes->pdata[i];

      stead_pick_append (self->recipe, recipe->id, recipe->name);
    }
  stead_pick_show (self->recipe, chosen);
}

/* (transfer full) (nullable): those in use, and the one of @kitchen */
static GPtrArray *
list_recipes (SteadStore          *store,
              const SteadKitchen  *kitchen,
              GError             **error)
{
  g_autoptr(GPtrArray) all = stead_recipe_repo_list (store, kitchen != NULL, error);

  for (guint i = kitchen != NULL && all != NULL ? all->len : 0; i > 0; i--)
    if (((SteadRecipe *) all->pdata[i - 1])->id != kitchen->recipe_id)
      g_ptr_array_remove_index (all, i - 1);
  return g_steal_pointer (&all);
}

void
stead_cook_dialog_show_new (GtkWidget *parent,
                            SteadDesk *desk,
                            gint64     recipe_id,
                            double     wanted_base)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) recipes = list_recipes (store, NULL, &error);
  SteadCookDialog *self;

  if (recipes == NULL || recipes->len == 0)
    {
      stead_desk_say (desk, recipes == NULL ? error->message : _("Write a recipe first: a kitchen batch follows one."), FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_COOK_DIALOG, "title", _("Plan a kitchen batch"), NULL);
  self->recipes = g_steal_pointer (&recipes);
  fill_recipes (self, recipe_id);
  fill_people (self, store);
  gtk_widget_hide (GTK_WIDGET (self->minutes));
  gtk_widget_hide (GTK_WIDGET (self->note));
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, stead_store_get_today (store));
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  show_wanted (self, wanted_base);
  show_stock (self);
  gtk_widget_activate_action (GTK_WIDGET (self), STEAD_DIALOG_FIT, NULL);
  gtk_widget_grab_focus (GTK_WIDGET (self->wanted));
}

void
stead_cook_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     batch_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadKitchen) kitchen = stead_kitchen_repo_get (store, batch_id, &error);
  g_autoptr(GPtrArray) recipes = kitchen != NULL ? list_recipes (store, kitchen, &error) : NULL;
  SteadCookDialog *self;

  if (recipes == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_COOK_DIALOG, "title", _("Change the kitchen batch"), "save-label", _("Save changes"),
                       "delete-label", _("Delete batch"), NULL);
  self->kitchen = g_steal_pointer (&kitchen);
  self->recipes = g_steal_pointer (&recipes);
  fill_recipes (self, self->kitchen->recipe_id);
  gtk_widget_set_sensitive (GTK_WIDGET (self->recipe), FALSE);
  gtk_widget_hide (self->people_box);
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, self->kitchen->batch.started_on);
  stead_field_set_text (self->name, self->kitchen->batch.name);
  stead_field_show_number (self->minutes, round (self->kitchen->minutes));
  stead_field_set_text (self->note, self->kitchen->batch.note != NULL ? self->kitchen->batch.note : "");
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  show_wanted (self, self->kitchen->wanted_base);
  gtk_widget_activate_action (GTK_WIDGET (self), STEAD_DIALOG_FIT, NULL);
  gtk_widget_grab_focus (GTK_WIDGET (self->wanted));
}
