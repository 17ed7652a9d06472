/* stead-kitchen-people.c - who worked in a kitchen batch, and for how many minutes.
 *
 * Minutes can still be written down after the batch is finished.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/make/stead-kitchen-people.h"

#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"

struct _SteadKitchenPeople
{
  GtkWidget    parent_instance;

  SteadDesk   *desk;
  gint64       batch_id;
  GPtrArray   *people;     /* of SteadBatchPerson, as shown */

  GtkWidget   *rows, *form;
  GtkLabel    *sum, *none;
  SteadPick   *person;
  SteadField  *minutes;
};

G_DEFINE_FINAL_TYPE (SteadKitchenPeople, stead_kitchen_people, GTK_TYPE_WIDGET)

typedef struct
{
  gint64 batch_id, person_id;
  double minutes;
} Work;

static gboolean
work_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  const Work *work = data;

  return stead_kitchen_repo_set_person (store, work->batch_id, work->person_id, work->minutes, error);
}

static gboolean
drop_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  const Work *work = data;

  return stead_kitchen_repo_drop_person (store, work->batch_id, work->person_id, error);
}

static void
record_cb (SteadKitchenPeople *self)
{
  g_autoptr(GError) error = NULL;
  Work work = { .batch_id = self->batch_id, .person_id = stead_pick_get (self->person) };
  g_autofree char *number = NULL, *step = NULL;

  if (work.person_id == 0)
    {
      stead_pick_say (self->person, _("Choose who worked."), TRUE);
      return;
    }
  if (stead_field_is_empty (self->minutes))
    {
      stead_field_set_error (self->minutes, _("Enter the minutes."));
      return;
    }
  if (!stead_field_read_number (self->minutes, 0, &work.minutes))
    return;
  stead_pick_say (self->person, NULL, FALSE);
  number = stead_number_format (work.minutes, 0);
  /* Translators: a step that can be undone: "45 minutes of work of Maya R." */
  step = g_strdup_printf (_("%s minutes of work of %s"), number, stead_pick_get_text (self->person));
  if (!stead_desk_act (self->desk, step, work_act, &work, &error))
    {
      stead_field_set_error (self->minutes, error->message);
      return;
    }
  stead_field_set_text (self->minutes, "");
}

static void
drop_cb (SteadBatchPerson *person,
         GtkWidget        *button)
{
  SteadKitchenPeople *self = STEAD_KITCHEN_PEOPLE (gtk_widget_get_ancestor (button, STEAD_TYPE_KITCHEN_PEOPLE));
  Work work = { .batch_id = self->batch_id, .person_id = person->person_id };
  g_autoptr(GError) error = NULL;
  /* Translators: a step that can be undone; a person's name follows. */
  g_autofree char *step = g_strdup_printf (_("taking off the work of %s"), person->name);

  if (!stead_desk_act (self->desk, step, drop_act, &work, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

/* --- showing -------------------------------------------------------------------------------- */

static void
add_row (SteadKitchenPeople *self,
         SteadBatchPerson   *person,
         int                 at)
{
  g_autofree char *number = stead_number_format (person->minutes, 0);
  g_autofree char *minutes = person->minutes > 0 ? g_strdup_printf (_("%s min"), number) : g_strdup (_("no minutes yet"));
  g_autofree char *name = g_strdup_printf (_("Take %s off"), person->name);

  gtk_grid_attach (GTK_GRID (self->rows), stead_make_label (person->name, NULL), 0, at, 1, 1);
  gtk_grid_attach (GTK_GRID (self->rows), stead_make_figure (minutes, person->minutes > 0 ? "strong" : "soft"), 1, at, 1, 1);
  gtk_grid_attach (GTK_GRID (self->rows), stead_make_link (_("Take off"), name, G_CALLBACK (drop_cb), person), 2, at, 1, 1);
}

/* Those who cook stand first among all who are still here. */
static void
fill_persons (SteadKitchenPeople *self)
{
  g_autoptr(GPtrArray) all = stead_person_repo_list (stead_desk_get_store (self->desk), NULL);
  gint64 chosen = stead_pick_get (self->person);

  stead_pick_clear (self->person);
  for (guint i = 0; i < self->people->len; i++)
    {
      const SteadBatchPerson *person = self->people->pdata[i];

      stead_pick_append (self->person, person->person_id, person->name);
    }
  for (guint i = 0; all != NULL && i < all->len; i++)
    {
      const SteadPerson *person = all->pdata[i];
      gboolean there = person->left_on != STEAD_DAY_NONE;

      for (guint j = 0; j < self->people->len; j++)
        there |= ((SteadBatchPerson *) self->people->pdata[j])->person_id == person->id;
      if (!there)
        stead_pick_append (self->person, person->id, person->name);
    }
  stead_pick_show (self->person, chosen);
  gtk_widget_set_visible (self->form, stead_pick_count (self->person) > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->none), stead_pick_count (self->person) == 0);
}

static void
show_sum (SteadKitchenPeople       *self,
          const SteadKitchenAnswer *answer)
{
  g_autofree char *worked = stead_number_format (answer->worked_minutes, 0);
  g_autofree char *planned = stead_number_format (round (answer->kitchen->minutes), 0);
  g_autofree char *text = NULL;

  if (answer->kitchen->minutes > 0)
    /* Translators: minutes of work, minutes planned. */
    text = g_strdup_printf (_("%s of %s minutes planned."), worked, planned);
  else
    text = g_strdup_printf (_("%s minutes of work."), worked);
  stead_make_say (self->sum, text, FALSE);
}

void
stead_kitchen_people_show (SteadKitchenPeople       *self,
                           SteadDesk                *desk,
                           const SteadKitchenAnswer *answer)
{
  g_return_if_fail (STEAD_IS_KITCHEN_PEOPLE (self));

  g_set_object (&self->desk, desk);
  self->batch_id = answer->kitchen->batch.id;
  stead_make_clear (self->rows);
  g_clear_pointer (&self->people, g_ptr_array_unref);
  self->people = g_ptr_array_ref (answer->people);
  for (guint i = 0; i < self->people->len; i++)
    add_row (self, self->people->pdata[i], (int) i);
  gtk_widget_set_visible (self->rows, self->people->len > 0);
  show_sum (self, answer);
  fill_persons (self);
}

/* --- the object ---------------------------------------------------------------------------- */

static void
stead_kitchen_people_dispose (GObject *object)
{
  SteadKitchenPeople *self = STEAD_KITCHEN_PEOPLE (object);

  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_pointer (&self->people, g_ptr_array_unref);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_kitchen_people_parent_class)->dispose (object);
}

static void
stead_kitchen_people_class_init (SteadKitchenPeopleClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_kitchen_people_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
make_form (SteadKitchenPeople *self)
{
  GtkWidget *form = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *press = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *record = gtk_button_new_with_label (_("Record minutes"));

  self->person = STEAD_PICK (stead_pick_new (_("Who")));
  self->minutes = STEAD_FIELD (stead_field_new (_("Minutes of work"), STEAD_FIELD_NUMBER));
  gtk_widget_set_hexpand (GTK_WIDGET (self->minutes), FALSE);
  g_signal_connect_swapped (self->minutes, "activate", G_CALLBACK (record_cb), self);
  g_signal_connect_swapped (record, "clicked", G_CALLBACK (record_cb), self);
  gtk_box_append (GTK_BOX (press), gtk_label_new (NULL));
  gtk_box_append (GTK_BOX (press), record);
  gtk_widget_set_valign (press, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (form), GTK_WIDGET (self->person));
  gtk_box_append (GTK_BOX (form), GTK_WIDGET (self->minutes));
  gtk_box_append (GTK_BOX (form), press);
  return form;
}

static void
stead_kitchen_people_init (SteadKitchenPeople *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);

  self->rows = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->rows), 18);
  self->sum = GTK_LABEL (stead_make_label (NULL, "soft"));
  self->none = GTK_LABEL (stead_make_label (_("Nobody is written down yet. Press Ctrl+K and type “People” to add who works here."), "soft"));
  self->form = make_form (self);
  gtk_box_append (GTK_BOX (box), self->rows);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->sum));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->none));
  gtk_box_append (GTK_BOX (box), self->form);
  gtk_widget_set_parent (box, GTK_WIDGET (self));
}

GtkWidget *
stead_kitchen_people_new (void)
{
  return g_object_new (STEAD_TYPE_KITCHEN_PEOPLE, NULL);
}
