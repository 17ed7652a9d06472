/* stead-work-view.c - the work on a build: hours, days, and who may do what. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/fund/stead-fund-dialogs.h"
#include "app/fund/stead-fund-rows.h"
#include "app/fund/stead-work-view.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

struct _SteadWorkView
{
  GtkWidget  parent_instance;

  SteadDesk *desk;         /* (nullable) */
  gint64     build_id;
  gint64     done_id;      /* the phase that is said to be done */
  GtkLabel  *sentence;
  GtkBox    *phases;
};

G_DEFINE_FINAL_TYPE (SteadWorkView, stead_work_view, GTK_TYPE_WIDGET)

/* --- what is done --------------------------------------------------------------------- */

static void
phase_cb (SteadWorkView *self)
{
  stead_phase_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, 0);
}

static void
change_cb (SteadWorkView *self,
           GtkWidget     *button)
{
  stead_phase_dialog_show (GTK_WIDGET (self), self->desk, self->build_id, stead_fund_row_id (button));
}

static gboolean
done_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadWorkView *self = data;
  g_autoptr(GPtrArray) phases = stead_build_phase_repo_list (store, self->build_id, error);

  if (phases == NULL)
    return FALSE;
  for (guint i = 0; i < phases->len; i++)
    {
      SteadBuildPhase *phase = phases->pdata[i];

      if (phase->id != self->done_id)
        continue;
      phase->done_on = stead_store_get_today (store);
      return stead_build_phase_repo_save (store, phase, error);
    }
  return TRUE;
}

static void
done_cb (SteadWorkView *self,
         GtkWidget     *button)
{
  g_autoptr(GError) error = NULL;

  self->done_id = stead_fund_row_id (button);
  if (!stead_desk_act (self->desk, _("work done"), done_act, self, &error))
    stead_desk_say (self->desk, error->message, FALSE);
}

/* --- what is shown -------------------------------------------------------------------- */

static char *
phase_text (const SteadBuildWork *work)
{
  const SteadBuildPhase *phase = work->phase;
  g_autofree char *hours = stead_number_format (phase->hours, 1);
  g_autofree char *worked = stead_number_format (phase->worked_h, 1);
  g_autofree char *days = stead_build_phase_days (phase);
  g_autoptr(GString) text = g_string_new (NULL);

  if (phase->worked_h > 0)
    /* Translators: hours planned, hours worked, days. */
    g_string_append_printf (text, _("%s hours planned, %s worked; %s"), hours, worked, days);
  else
    g_string_append_printf (text, _("%s hours planned; %s"), hours, days);
  if (work->text != NULL)
    g_string_append_printf (text, "\n⚠ %s", work->text);
  if (phase->decided != NULL)
    {
      g_string_append_c (text, '\n');
      g_string_append_printf (text, _("The advisor decided: %s"), phase->decided);
    }
  return g_strdup (text->str);
}

static char *
sentence_text (const SteadBuildAnswer *answer)
{
  g_autofree char *hours = stead_number_format (answer->hours, 1);
  g_autofree char *worked = stead_number_format (answer->worked_h, 1);
  guint done = 0;

  for (guint i = 0; i < answer->phases->len; i++)
    done += ((const SteadBuildPhase *) answer->phases->pdata[i])->done_on != STEAD_DAY_NONE;
  if (answer->phases->len == 0)
    return g_strdup (_("No work is planned yet. Divide it into stretches: marking out, corner posts, line posts, wire, gates, shelter. Students need two to three times as long as a practiced crew."));
  /* Translators: stretches of work that are done, all of them, hours planned, hours worked. */
  return g_strdup_printf (_("<b>%u of %u</b> stretches are done. %s hours are planned for all of it, %s were worked."), done,
                          answer->phases->len, hours, worked);
}

void
stead_work_view_show (SteadWorkView          *self,
                      SteadDesk              *desk,
                      const SteadBuildAnswer *answer)
{
  g_autofree char *sentence = sentence_text (answer);

  g_return_if_fail (STEAD_IS_WORK_VIEW (self) && STEAD_IS_DESK (desk));
  g_set_object (&self->desk, desk);
  self->build_id = answer->build->id;
  stead_make_say (self->sentence, sentence, TRUE);
  stead_make_clear (GTK_WIDGET (self->phases));
  for (guint i = 0; i < answer->works->len; i++)
    {
      const SteadBuildWork *work = answer->works->pdata[i];
      g_autofree char *text = phase_text (work);
      GtkWidget *row = stead_fund_row (self->phases, work->phase->id, work->phase->name, text);

      if (work->phase->done_on == STEAD_DAY_NONE)
        stead_fund_row_action (row, _("Done"), G_CALLBACK (done_cb), self);
      stead_fund_row_action (row, _("Change…"), G_CALLBACK (change_cb), self);
    }
}

/* --- the object ----------------------------------------------------------------------- */

static void
stead_work_view_dispose (GObject *object)
{
  SteadWorkView *self = STEAD_WORK_VIEW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_WORK_VIEW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_work_view_parent_class)->dispose (object);
}

static void
stead_work_view_class_init (SteadWorkViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_WRAP_LAYOUT);
  G_OBJECT_CLASS (klass)->dispose = stead_work_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("fund/stead-work-view.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadWorkView, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadWorkView, phases);
  gtk_widget_class_bind_template_callback (widget_class, phase_cb);
}

static void
stead_work_view_init (SteadWorkView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
