/* stead-fish-move-dialog.c - fish go to another tank, all of them or some.
 *
 * All of them keep their group, which moves today.  Some of them go to another group,
 * which may be a new one: it takes the plan of the old one, and what they cost so far
 * goes along with them.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-fish-move-dialog.h"

#include "answer/stead-fish-text.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-round.h"
#include "store/stead-farm-repo.h"
#include "store/stead-water-repo.h"

#define RESOURCE STEAD_UI ("raise/stead-fish-move-dialog.ui")

struct _SteadFishMoveDialog
{
  SteadDialog       parent_instance;

  SteadFishAnswer  *answer;     /* of the group that they leave */
  GPtrArray        *groups;     /* of SteadFish: that they may go to, before "a new group" */
  GPtrArray        *tanks;      /* of SteadTank */
  const SteadUnit  *unit;       /* of the weight */

  GtkToggleButton  *all, *some;
  GtkWidget        *some_box, *tank_box;
  GtkDropDown      *group, *tank;
  SteadField       *name, *number, *weight, *day, *note;
  GtkLabel         *about;
};

G_DEFINE_FINAL_TYPE (SteadFishMoveDialog, stead_fish_move_dialog, STEAD_TYPE_DIALOG)

static gboolean
moves_all (SteadFishMoveDialog *self)
{
  return gtk_toggle_button_get_active (self->all);
}

/* (nullable): a new group is chosen */
static const SteadFish *
chosen_group (SteadFishMoveDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->group);

  return at < self->groups->len ? self->groups->pdata[at] : NULL;
}

static void
choice_cb (SteadFishMoveDialog *self)
{
  gboolean all = moves_all (self);
  gboolean fresh = !all && chosen_group (self) == NULL;

  gtk_widget_set_visible (self->some_box, !all);
  gtk_widget_set_visible (GTK_WIDGET (self->name), fresh);
  gtk_widget_set_visible (self->tank_box, all || fresh);
  gtk_label_set_text (self->about, all ? _("The group lives in the other tank from today on. Its log goes on.")
                                       : _("What these fish cost so far goes along with them."));
}

/* --- saving --------------------------------------------------------------------------- */

static gboolean
save_all_act (SteadStore *store,
              gpointer    data,
              GError    **error)
{
  return stead_fish_repo_save (store, data, error);
}

typedef struct
{
  SteadFishMove *move;
  SteadFish     *fresh;   /* (nullable): to be made first */
} Moving;

static gboolean
save_some_act (SteadStore *store,
               gpointer    data,
               GError    **error)
{
  Moving *moving = data;

  if (moving->fresh != NULL)
    {
      if (!stead_fish_repo_save (store, moving->fresh, error))
        return FALSE;
      moving->move->to_id = moving->fresh->batch.id;
    }
  return stead_fish_repo_save_move (store, moving->move, error);
}

static gint64
chosen_tank (SteadFishMoveDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->tank);

  return at < self->tanks->len ? ((const SteadTank *) self->tanks->pdata[at])->place_id : 0;
}

/* (nullable) (transfer full): with the message shown */
static SteadFish *
copy_of_group (SteadFishMoveDialog  *self,
               GError              **error)
{
  SteadStore *store = stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self)));

  return stead_fish_repo_get (store, self->answer->group->batch.id, error);
}

static gboolean
needs_tank (SteadFishMoveDialog *self)
{
  if (chosen_tank (self) != 0)
    return FALSE;
  stead_dialog_show_error (STEAD_DIALOG (self), _("There is no other tank. Add one with “New tank…” where the group "
                                                  "is changed."));
  return TRUE;
}

static gboolean
save_all (SteadFishMoveDialog  *self,
          GError              **error)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));
  g_autoptr(SteadFish) group = NULL;
  g_autofree char *step = NULL;

  if (needs_tank (self))
    return FALSE;
  group = copy_of_group (self, error);
  if (group == NULL)
    return FALSE;
  group->batch.place_id = chosen_tank (self);
  /* Translators: the name of a group of fish. */
  step = g_strdup_printf (_("move of %s"), group->batch.name);
  return stead_desk_act (desk, step, save_all_act, group, error);
}

/* A group with the same plan that begins empty on the day of the move; its fish weigh what those that come weigh. */
static SteadFish *
make_fresh (SteadFishMoveDialog  *self,
            const SteadFishMove  *move,
            GError              **error)
{
  g_autoptr(SteadFish) fresh = copy_of_group (self, error);

  if (fresh == NULL)
    return NULL;
  fresh->batch.id = 0;
  g_free (fresh->batch.name);
  fresh->batch.name = g_strstrip (g_strdup (stead_field_get_text (self->name)));
  g_clear_pointer (&fresh->batch.note, g_free);
  fresh->batch.started_on = move->day;
  fresh->batch.place_id = chosen_tank (self);
  fresh->stocked = 0;
  fresh->stocked_g = move->mean_g;
  fresh->cost_cents = 0;
  fresh->is_gift = FALSE;
  fresh->purge_from = STEAD_DAY_NONE;
  return g_steal_pointer (&fresh);
}

static gboolean
read_move (SteadFishMoveDialog *self,
           SteadFishMove       *move)
{
  double weight_kg = 0;
  const char *name;
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &move->day);

  good &= stead_field_read_count (self->number, 0, &move->n);
  good &= stead_field_read_quantity (self->weight, 0, &weight_kg);
  if (gtk_widget_get_visible (GTK_WIDGET (self->name)))
    good &= stead_field_read_text (self->name, &name);
  if (!good)
    return FALSE;
  move->from_id = self->answer->group->batch.id;
  move->mean_g = stead_round_back (weight_kg * 1000, self->answer->mean_g.likely);
  move->cost_cents = stead_fish_share_cents (self->answer, move->n);
  move->note = stead_field_is_empty (self->note) ? NULL : g_strdup (stead_field_get_text (self->note));
  return TRUE;
}

static gboolean
save_some (SteadFishMoveDialog  *self,
           GError              **error)
{
  g_autoptr(SteadFishMove) move = g_new0 (SteadFishMove, 1);
  g_autoptr(SteadFish) fresh = NULL;
  g_autofree char *step = NULL;
  Moving moving;

  if (!read_move (self, move))
    return FALSE;
  if (chosen_group (self) != NULL)
    move->to_id = chosen_group (self)->batch.id;
  else
    {
      if (needs_tank (self))
        return FALSE;
      fresh = make_fresh (self, move, error);
      if (fresh == NULL)
        return FALSE;
    }
  moving = (Moving) { move, fresh };
  step = stead_fish_move_name (move);
  return stead_desk_act (stead_dialog_get_desk (STEAD_DIALOG (self)), step, save_some_act, &moving, error);
}

static gboolean
stead_fish_move_dialog_save (SteadDialog *dialog,
                             GError     **error)
{
  SteadFishMoveDialog *self = STEAD_FISH_MOVE_DIALOG (dialog);

  return moves_all (self) ? save_all (self, error) : save_some (self, error);
}

/* --- showing --------------------------------------------------------------------------------- */

/* Groups of the same kind that are under way, and a new one. */
static void
fill_groups (SteadFishMoveDialog *self,
             SteadStore          *store)
{
  const SteadFish *from = self->answer->group;
  g_autoptr(GPtrArray) groups = stead_fish_repo_list (store, FALSE, NULL);
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; groups != NULL && i < groups->len; i++)
    {
      const SteadFish *group = groups->pdata[i];

      if (group->batch.id == from->batch.id || g_strcmp0 (group->species, from->species) != 0)
        continue;
      gtk_string_list_append (names, group->batch.name);
      g_ptr_array_add (self->groups, g_steal_pointer (&groups->pdata[i]));
    }
  gtk_string_list_append (names, _("A new group"));
  gtk_drop_down_set_model (self->group, G_LIST_MODEL (names));
}

static void
fill_tanks (SteadFishMoveDialog *self,
            SteadStore          *store)
{
  g_autoptr(GPtrArray) tanks = stead_tank_repo_list (store, NULL);
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; tanks != NULL && i < tanks->len; i++)
    {
      const SteadTank *tank = tanks->pdata[i];

      if (tank->place_id == self->answer->group->batch.place_id)
        continue;
      gtk_string_list_append (names, tank->name);
      g_ptr_array_add (self->tanks, g_steal_pointer (&tanks->pdata[i]));
    }
  gtk_drop_down_set_model (self->tank, G_LIST_MODEL (names));
}

static void
show_fields (SteadFishMoveDialog *self,
             SteadStore          *store)
{
  const SteadFishAnswer *answer = self->answer;
  double mean_g = isnan (answer->mean_g.likely) ? 0 : answer->mean_g.likely;

  self->unit = stead_fish_weight_unit (mean_g, answer->farm->units);
  stead_field_set_unit (self->weight, self->unit);
  if (mean_g > 0)
    {
      g_autofree char *text = stead_fish_weight_number (mean_g, self->unit);

      stead_field_show_as (self->weight, text, mean_g / 1000);
    }
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, stead_store_get_today (store));
}

static void
stead_fish_move_dialog_dispose (GObject *object)
{
  SteadFishMoveDialog *self = STEAD_FISH_MOVE_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_FISH_MOVE_DIALOG);
  g_clear_pointer (&self->answer, stead_fish_answer_free);
  g_clear_pointer (&self->groups, g_ptr_array_unref);
  g_clear_pointer (&self->tanks, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_fish_move_dialog_parent_class)->dispose (object);
}

#define BIND(child) gtk_widget_class_bind_template_child (widget_class, SteadFishMoveDialog, child)

static void
stead_fish_move_dialog_class_init (SteadFishMoveDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_fish_move_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_fish_move_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  BIND (all);
  BIND (some);
  BIND (some_box);
  BIND (tank_box);
  BIND (group);
  BIND (tank);
  BIND (name);
  BIND (number);
  BIND (weight);
  BIND (day);
  BIND (note);
  BIND (about);
  gtk_widget_class_bind_template_callback (widget_class, choice_cb);
}

static void
stead_fish_move_dialog_init (SteadFishMoveDialog *self)
{
  self->groups = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_fish_free);
  self->tanks = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_tank_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_fish_move_dialog_show (GtkWidget *parent,
                             SteadDesk *desk,
                             gint64     fish_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadFishMoveDialog *self;
  g_autoptr(SteadFishAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *title = NULL;

  answer = stead_fish_answer_new_now (store, fish_id, &error);
  if (answer == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  /* Translators: the name of a group of fish. */
  title = g_strdup_printf (_("Move %s"), answer->group->batch.name);
  self = g_object_new (STEAD_TYPE_FISH_MOVE_DIALOG, "title", title, NULL);
  self->answer = g_steal_pointer (&answer);
  fill_groups (self, store);
  fill_tanks (self, store);
  show_fields (self, store);
  choice_cb (self);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}
