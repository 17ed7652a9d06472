/* stead-batch-panel.c - plan and review of any batch. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/raise/stead-batch-panel-private.h"

#include "app/raise/stead-again-dialog.h"
#include "app/raise/stead-end-dialog.h"
#include "app/raise/stead-harvest-dialog.h"
#include "app/raise/stead-note-dialog.h"
#include "app/raise/stead-plan-dialog.h"
#include "app/raise/stead-treatment-dialog.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"

#define RESOURCE STEAD_UI ("raise/stead-batch-panel.ui")

struct _SteadBatchPanel
{
  GtkWidget          parent_instance;

  SteadDesk         *desk;
  SteadBatchAnswer  *answer;      /* (nullable) */
  gint64             batch_id;
  gboolean           stale;       /* to be read anew once it can be seen */

  GtkWidget         *window, *buttons, *body;
  GtkWidget         *harvest, *end, *reopen;
  GtkWidget         *review_part, *losses_part, *treatments_part, *notes_part, *harvests_part;
  GtkLabel          *sentence, *caution, *plan_title, *losses;
  GtkGrid           *plan, *harvests;
  GtkBox            *review, *treatments, *notes;
  SteadWhyBox       *whys;
};

G_DEFINE_FINAL_TYPE (SteadBatchPanel, stead_batch_panel, GTK_TYPE_WIDGET)

/* --- what the person does ----------------------------------------------------------- */

static void
harvest_cb (SteadBatchPanel *self)
{
  stead_harvest_dialog_show (GTK_WIDGET (self), self->desk, self->batch_id);
}

static void
plan_cb (SteadBatchPanel *self)
{
  stead_plan_dialog_show (GTK_WIDGET (self), self->desk, self->batch_id);
}

static void
note_cb (SteadBatchPanel *self)
{
  stead_note_dialog_show (GTK_WIDGET (self), self->desk, self->batch_id, 0);
}

static void
treatment_cb (SteadBatchPanel *self)
{
  stead_treatment_dialog_show (GTK_WIDGET (self), self->desk, self->batch_id, 0);
}

static void
card_cb (SteadBatchPanel *self)
{
  if (self->answer != NULL)
    stead_paper_dialog_show (GTK_WIDGET (self), self->desk, "batch-card", self->answer->money.batch->name);
}

static void
end_cb (SteadBatchPanel *self)
{
  stead_end_dialog_show (GTK_WIDGET (self), self->desk, self->batch_id);
}

static gboolean
reopen_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_batch_repo_end (store, ((SteadBatchPanel *) data)->batch_id, STEAD_DAY_NONE, error);
}

static void
reopen_cb (SteadBatchPanel *self)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *step = NULL;

  if (self->answer == NULL)
    return;
  /* Translators: name of a step to undo; name of a batch. */
  step = g_strdup_printf (_("going on with “%s”"), self->answer->money.batch->name);
  if (!stead_desk_act (self->desk, step, reopen_act, self, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

static void
again_cb (SteadBatchPanel *self)
{
  stead_again_dialog_show (GTK_WIDGET (self), self->desk, self->batch_id);
}

/* --- showing -------------------------------------------------------------------------- */

static void
show_losses (SteadBatchPanel *self)
{
  const SteadBatchAnswer *answer = self->answer;
  g_autoptr(GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *text = NULL;

  for (guint i = 0; i < answer->losses->len; i++)
    g_ptr_array_add (parts, stead_batch_loss_text (answer->losses->pdata[i]));
  g_ptr_array_add (parts, NULL);
  text = g_strjoinv ("\n", (char **) parts->pdata);
  gtk_label_set_text (self->losses, text);
  gtk_widget_set_visible (self->losses_part, answer->losses->len > 0);
}

static void
show_whys (SteadBatchPanel *self)
{
  g_autoptr(GPtrArray) whys = stead_batch_answer_whys (self->answer);

  stead_why_box_set (self->whys, whys);
  gtk_widget_set_visible (GTK_WIDGET (self->whys), whys->len > 0);
}

static void
show_lists (SteadBatchPanel *self)
{
  const SteadBatchAnswer *answer = self->answer;

  gtk_label_set_text (self->plan_title, answer->has_plan ? _("Plan beside what came") : _("What it gave"));
  stead_batch_panel_fill_plan (self->plan, answer);
  stead_batch_panel_fill_review (self->review, answer);
  gtk_widget_set_visible (self->review_part, answer->review->len > 0);
  stead_batch_panel_fill_harvests (self->harvests, answer, self->desk, GTK_WIDGET (self));
  gtk_widget_set_visible (self->harvests_part, answer->harvests->len > 0);
  stead_batch_panel_fill_treatments (self->treatments, answer, self->desk, GTK_WIDGET (self));
  gtk_widget_set_visible (self->treatments_part, answer->treatments->len > 0);
  stead_batch_panel_fill_notes (self->notes, self->batch_id, self->desk, GTK_WIDGET (self));
  gtk_widget_set_visible (self->notes_part, gtk_widget_get_first_child (GTK_WIDGET (self->notes)) != NULL);
  show_losses (self);
  show_whys (self);
}

static void
show_answer (SteadBatchPanel *self)
{
  const SteadBatchAnswer *answer = self->answer;
  gboolean ended = answer->money.batch->ended_on != STEAD_DAY_NONE;

  gtk_label_set_markup (self->sentence, answer->sentence);
  stead_ui_tell (self->caution, answer->caution);
  gtk_widget_set_visible (self->end, !ended);
  gtk_widget_set_visible (self->reopen, ended);
  gtk_widget_set_sensitive (self->harvest, !ended);
  show_lists (self);
}

/* Whether the focus stands in what is about to be made anew. */
static gboolean
has_focus (SteadBatchPanel *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  return focus != NULL && gtk_widget_is_ancestor (focus, self->body) && !gtk_widget_is_ancestor (focus, self->buttons);
}

void
stead_batch_panel_refresh (SteadBatchPanel *self)
{
  g_autoptr(GError) error = NULL;
  gboolean focused;

  g_return_if_fail (STEAD_IS_BATCH_PANEL (self));
  self->stale = !gtk_widget_get_mapped (GTK_WIDGET (self));
  if (self->stale || self->batch_id == 0 || self->desk == NULL || stead_desk_get_store (self->desk) == NULL)
    return;
  focused = has_focus (self);
  g_clear_pointer (&self->answer, stead_batch_answer_free);
  self->answer = stead_batch_answer_new (stead_desk_get_store (self->desk), self->batch_id, &error);
  gtk_widget_set_visible (self->body, self->answer != NULL);
  if (self->answer != NULL)
    show_answer (self);
  else
    gtk_label_set_text (self->sentence, error->message);
  if (focused)
    gtk_widget_child_focus (self->buttons, GTK_DIR_TAB_FORWARD);
}

void
stead_batch_panel_show (SteadBatchPanel *self,
                        gint64           batch_id)
{
  g_return_if_fail (STEAD_IS_BATCH_PANEL (self));
  self->batch_id = batch_id;
  stead_batch_panel_refresh (self);
}

static void
map_cb (SteadBatchPanel *self)
{
  if (self->stale)
    stead_batch_panel_refresh (self);
}

void
stead_batch_panel_set_desk (SteadBatchPanel *self,
                            SteadDesk       *desk)
{
  g_return_if_fail (STEAD_IS_BATCH_PANEL (self) && STEAD_IS_DESK (desk));
  g_set_object (&self->desk, desk);
}

/* --- the widget ------------------------------------------------------------------------ */

static void
stead_batch_panel_dispose (GObject *object)
{
  SteadBatchPanel *self = STEAD_BATCH_PANEL (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_BATCH_PANEL);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->answer, stead_batch_answer_free);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_batch_panel_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, window);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, buttons);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, body);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, harvest);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, end);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, reopen);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, caution);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, plan_title);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, plan);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, review_part);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, review);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, harvests_part);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, harvests);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, losses_part);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, losses);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, treatments_part);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, treatments);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, notes_part);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, notes);
  gtk_widget_class_bind_template_child (widget_class, SteadBatchPanel, whys);
}

static void
stead_batch_panel_class_init (SteadBatchPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_WHY_BOX);
  g_type_ensure (STEAD_TYPE_WRAP_LAYOUT);
  G_OBJECT_CLASS (klass)->dispose = stead_batch_panel_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, RESOURCE);
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, harvest_cb);
  gtk_widget_class_bind_template_callback (widget_class, plan_cb);
  gtk_widget_class_bind_template_callback (widget_class, note_cb);
  gtk_widget_class_bind_template_callback (widget_class, treatment_cb);
  gtk_widget_class_bind_template_callback (widget_class, card_cb);
  gtk_widget_class_bind_template_callback (widget_class, end_cb);
  gtk_widget_class_bind_template_callback (widget_class, reopen_cb);
  gtk_widget_class_bind_template_callback (widget_class, again_cb);
}

static void
stead_batch_panel_init (SteadBatchPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect (self, "map", G_CALLBACK (map_cb), NULL);
}

GtkWidget *
stead_batch_panel_new (SteadDesk *desk)
{
  SteadBatchPanel *self = g_object_new (STEAD_TYPE_BATCH_PANEL, NULL);

  stead_batch_panel_set_desk (self, desk);
  return GTK_WIDGET (self);
}
