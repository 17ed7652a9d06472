/* stead-again-dialog.c - the next batch, after the model of a former one. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "app/raise/stead-again-dialog.h"

#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-batch-again.h"

#define RESOURCE STEAD_UI ("raise/stead-again-dialog.ui")

struct _SteadAgainDialog
{
  SteadDialog      parent_instance;

  SteadBatch      *model;
  SteadBatchStart  start;
  gint64           made_id;

  SteadField      *name, *day, *count, *cost;
  GtkLabel        *about;
};

G_DEFINE_FINAL_TYPE (SteadAgainDialog, stead_again_dialog, STEAD_TYPE_DIALOG)

static gboolean
start_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  SteadAgainDialog *self = data;

  return stead_batch_repo_start_again (store, self->model->id, &self->start, &self->made_id, error);
}

static gboolean
stead_again_dialog_save (SteadDialog  *dialog,
                         GError      **error)
{
  SteadAgainDialog *self = STEAD_AGAIN_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  const char *name = NULL;
  g_autofree char *step = NULL;
  gboolean good = stead_field_read_text (self->name, &name);

  good &= stead_field_read_day (self->day, STEAD_DAY_NONE, &self->start.started_on);
  good &= stead_field_read_count (self->count, 0, &self->start.count);
  good &= stead_field_read_money (self->cost, 0, &self->start.cost_cents);
  if (!good)
    return FALSE;
  if (self->start.count < 1)
    {
      stead_field_set_error (self->count, _("Enter 1 or more."));
      return FALSE;
    }
  g_free (self->start.name);
  self->start.name = g_strstrip (g_strdup (name));
  step = g_strdup_printf (_("new batch “%s”"), self->start.name);
  if (!stead_desk_act (desk, step, start_act, self, error))
    return FALSE;
  stead_desk_jump (desk, STEAD_TARGET_BATCH, self->made_id);
  return TRUE;
}

/* "Catfish 2" after "Catfish 1"; after a name without a number, " 2". */
static char *
next_name (const char *name)
{
  const char *end = name + strlen (name);
  const char *digits = end;
  guint64 number;

  while (digits > name && g_ascii_isdigit (digits[-1]))
    digits--;
  if (digits == end || end - digits > 9)
    return g_strdup_printf ("%s 2", name);
  number = g_ascii_strtoull (digits, NULL, 10) + 1;
  return g_strdup_printf ("%.*s%" G_GUINT64_FORMAT, (int) (digits - name), name, number);
}

static const char *
count_label (SteadBatchKind kind)
{
  switch (kind)
    {
    case STEAD_BATCH_FLOCK: return _("How many birds");
    case STEAD_BATCH_FISH: return _("How many fish");
    case STEAD_BATCH_CROP:
    case STEAD_BATCH_KITCHEN:
    default: return _("How many plants");
    }
}

static void
stead_again_dialog_dispose (GObject *object)
{
  SteadAgainDialog *self = STEAD_AGAIN_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_AGAIN_DIALOG);
  g_clear_pointer (&self->model, stead_batch_free);
  g_clear_pointer (&self->start.name, g_free);
  G_OBJECT_CLASS (stead_again_dialog_parent_class)->dispose (object);
}

static void
stead_again_dialog_class_init (SteadAgainDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_again_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_again_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  gtk_widget_class_bind_template_child (widget_class, SteadAgainDialog, name);
  gtk_widget_class_bind_template_child (widget_class, SteadAgainDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadAgainDialog, count);
  gtk_widget_class_bind_template_child (widget_class, SteadAgainDialog, cost);
  gtk_widget_class_bind_template_child (widget_class, SteadAgainDialog, about);
}

static void
stead_again_dialog_init (SteadAgainDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_again_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     batch_id)
{
  SteadStore *store;
  g_autoptr(SteadBatch) model = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *about = NULL;
  g_autofree char *name = NULL;
  SteadBatchStart start;
  SteadAgainDialog *self;

  g_return_if_fail (STEAD_IS_DESK (desk));
  store = stead_desk_get_store (desk);
  g_return_if_fail (store != NULL);
  model = stead_batch_repo_get (store, batch_id, &error);
  if (model == NULL || !stead_batch_repo_start_read (store, batch_id, &start, &error))
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_AGAIN_DIALOG, "title", _("Start again"), NULL);
  about = g_strdup_printf (_("A new batch kept as “%s” was, with its plan and its routines. Its log begins empty."),
                           model->name);
  name = next_name (model->name);
  self->model = g_steal_pointer (&model);
  gtk_label_set_text (self->about, about);
  g_object_set (self->count, "label", count_label (self->model->kind), NULL);
  stead_field_set_currency (self->cost, stead_desk_get_farm (desk)->currency);
  stead_field_set_text (self->name, name);
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, start.started_on);
  stead_field_show_count (self->count, start.count);
  stead_field_show_money (self->cost, start.cost_cents);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}
