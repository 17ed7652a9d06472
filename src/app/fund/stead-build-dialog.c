/* stead-build-dialog.c - what is asked about a build. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-build-answer.h"
#include "app/fund/stead-fund-dialogs.h"
#include "store/stead-cash-repo.h"
#include "store/stead-store-watch.h"

typedef struct
{
  SteadBuild  *build;
  GArray      *funds;      /* of gint64, in the order of the choice; the first is none */
  GtkDropDown *kind, *animal, *fund;
  SteadField  *name, *head, *length, *width, *gate, *goal, *tax, *spare, *share, *season;
  gboolean     is_rectangle;
} Form;

static void
form_free (gpointer data)
{
  Form *form = data;

  stead_build_free (form->build);
  g_array_unref (form->funds);
  g_free (form);
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadBuild *build = data;

  stead_store_watch_id (store, &build->id);
  return stead_build_repo_save (store, build, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_build_repo_delete (store, ((SteadBuild *) data)->id, error);
}

/* The first gate stands in the middle of the second side. */
static void
set_size (SteadBuild *build,
          double      length,
          double      width,
          double      gate)
{
  stead_build_set_rectangle (build, length, width);
  if (gate > 0)
    {
      SteadFenceGate one = { 1, MAX ((width - gate) / 2, 0), gate };

      g_array_append_val (build->gates, one);
    }
}

static gboolean
read_plan (Form       *form,
           SteadBuild *build)
{
  double length = 0, width = 0, gate = 0;
  gboolean good;

  if (!form->is_rectangle || build->kind == STEAD_BUILD_LIST)
    return TRUE;
  good = stead_field_read_quantity (form->length, 0, &length);
  good &= stead_field_read_quantity (form->width, 0, &width);
  good &= stead_field_read_quantity (form->gate, 0, &gate);
  if (good && gate > width)
    {
      stead_field_set_error (form->gate, _("The gate is wider than its side."));
      return FALSE;
    }
  if (good && !(length > 0))
    {
      stead_field_set_error (form->length, _("Enter how long it is."));
      return FALSE;
    }
  if (good && !(width > 0))
    {
      stead_field_set_error (form->width, _("Enter how wide it is."));
      return FALSE;
    }
  if (good)
    set_size (build, length, width, gate);
  return good;
}

static gboolean
read_form (Form *form)
{
  SteadBuild *build = form->build;
  const char *name = NULL;
  gint64 head = 0;
  guint animal = gtk_drop_down_get_selected (form->animal);
  gboolean good = stead_field_read_text (form->name, &name);

  good &= stead_field_read_count (form->head, 0, &head);
  good &= stead_field_read_number (form->tax, 0, &build->tax_frac);
  good &= stead_field_read_number (form->spare, 0, &build->contingency_frac);
  good &= stead_field_read_day (form->goal, STEAD_DAY_NONE, &build->goal_on);
  good &= stead_field_read_number (form->share, 1, &build->sale_frac);
  good &= stead_field_read_number (form->season, 0.3, &build->season_frac);
  good &= read_plan (form, build);
  if (!good)
    return FALSE;
  g_free (build->name);
  build->name = g_strstrip (g_strdup (name));
  g_free (build->animal);
  build->animal = animal == 0 ? NULL : g_strdup (stead_build_animals ()[animal - 1]);
  build->head = animal == 0 ? 0 : (int) MIN (head, 100000);
  if (build->head == 0)
    g_clear_pointer (&build->animal, g_free);
  build->fund_id = g_array_index (form->funds, gint64, gtk_drop_down_get_selected (form->fund));
  return TRUE;
}

static gboolean
is_past (Form      *form,
         SteadForm *dialog)
{
  SteadStore *store = stead_form_get_store (dialog);

  return form->build->goal_on != STEAD_DAY_NONE && form->build->goal_on < stead_store_get_today (store);
}

static gboolean
save_cb (SteadForm  *dialog,
         gpointer    data,
         GError    **error)
{
  Form *form = data;
  gboolean is_new = form->build->id == 0;
  g_autofree char *step = NULL;

  /* The kind of a new one decides its usual figures. */
  if (form->build->id == 0 && form->build->kind != (SteadBuildKind) gtk_drop_down_get_selected (form->kind))
    {
      stead_build_free (form->build);
      form->build = stead_build_new ((SteadBuildKind) gtk_drop_down_get_selected (form->kind));
    }
  if (!read_form (form))
    return FALSE;
  /* Translators: name of a step to undo; name of a build. */
  step = g_strdup_printf (_("build “%s”"), form->build->name);
  if (stead_form_act (dialog, step, save_act, form->build, error))
    {
      /* What was just begun is what is looked at next. */
      if (is_new)
        stead_desk_jump (stead_dialog_get_desk (STEAD_DIALOG (dialog)), STEAD_TARGET_BUILD, form->build->id);
      return TRUE;
    }
  return stead_form_fail_at (is_past (form, dialog) ? form->goal : form->name, error);
}

static gboolean
remove_cb (SteadForm  *dialog,
           gpointer    data,
           GError    **error)
{
  Form *form = data;
  /* Translators: name of a step to undo; name of a build. */
  g_autofree char *step = g_strdup_printf (_("deleting the build “%s”"), form->build->name);

  return stead_form_act (dialog, step, remove_act, form->build, error);
}

static void
add_funds (Form       *form,
           SteadForm  *dialog,
           SteadStore *store)
{
  g_autoptr(GPtrArray) funds = stead_fund_repo_list (store, FALSE, NULL);
  g_autoptr(GStrvBuilder) names = g_strv_builder_new ();
  g_auto(GStrv) words = NULL;
  gint64 none = 0;
  guint chosen = 0;

  g_strv_builder_add (names, _("none yet"));
  g_array_append_val (form->funds, none);
  for (guint i = 0; funds != NULL && i < funds->len; i++)
    {
      const SteadFund *fund = funds->pdata[i];

      g_strv_builder_add (names, fund->name);
      g_array_append_val (form->funds, fund->id);
      if (fund->id == form->build->fund_id)
        chosen = i + 1;
    }
  words = g_strv_builder_end (names);
  form->fund = stead_form_add_choice (dialog, _("Fund of the cash book"), (const char * const *) words, chosen);
}

static void
add_animal (Form      *form,
            SteadForm *dialog,
            SteadDesk *desk)
{
  g_autoptr(GStrvBuilder) names = g_strv_builder_new ();
  g_auto(GStrv) words = NULL;
  guint chosen = 0;

  g_strv_builder_add (names, _("no animals"));
  for (guint i = 0; stead_build_animals ()[i] != NULL; i++)
    {
      g_strv_builder_add (names, stead_build_animal_name (stead_build_animals ()[i]));
      if (g_strcmp0 (form->build->animal, stead_build_animals ()[i]) == 0)
        chosen = i + 1;
    }
  words = g_strv_builder_end (names);
  form->animal = stead_form_add_choice (dialog, _("Who lives in it"), (const char * const *) words, chosen);
  form->head = stead_form_add (dialog, desk, _("How many animals"), STEAD_FIELD_COUNT);
  if (form->build->head > 0)
    stead_field_show_count (form->head, form->build->head);
}

static void
add_fields (Form      *form,
            SteadForm *dialog,
            SteadDesk *desk)
{
  const char *kinds[] = { _("Pen"), _("Poultry run"), _("Hoop house"), _("List of things"), NULL };
  SteadBuild *build = form->build;

  form->name = stead_form_add (dialog, desk, _("Name of the build"), STEAD_FIELD_TEXT);
  stead_field_set_text (form->name, build->name != NULL ? build->name : "");
  form->kind = stead_form_add_choice (dialog, _("What it is"), kinds, build->kind);
  gtk_widget_set_sensitive (GTK_WIDGET (form->kind), build->id == 0);
  add_animal (form, dialog, desk);
  form->length = stead_form_add (dialog, desk, _("Length"), STEAD_FIELD_QUANTITY);
  form->width = stead_form_add (dialog, desk, _("Width"), STEAD_FIELD_QUANTITY);
  form->gate = stead_form_add (dialog, desk, _("Width of the gate"), STEAD_FIELD_QUANTITY);
  form->tax = stead_form_add (dialog, desk, _("Sales tax"), STEAD_FIELD_PERCENT);
  stead_field_show_number (form->tax, build->tax_frac);
  form->spare = stead_form_add (dialog, desk, _("For what was forgotten"), STEAD_FIELD_PERCENT);
  stead_field_show_number (form->spare, build->contingency_frac);
  form->goal = stead_form_add (dialog, desk, _("Wanted by"), STEAD_FIELD_DAY);
  if (build->goal_on != STEAD_DAY_NONE)
    stead_field_show_day (form->goal, build->goal_on);
  form->share = stead_form_add (dialog, desk, _("Share of each sale put aside for it"), STEAD_FIELD_PERCENT);
  stead_field_show_number (form->share, build->sale_frac);
  form->season = stead_form_add (dialog, desk, _("Spread that the season moves together"), STEAD_FIELD_PERCENT);
  stead_field_show_number (form->season, build->season_frac);
  add_funds (form, dialog, stead_desk_get_store (desk));
  gtk_widget_set_visible (GTK_WIDGET (form->length), form->is_rectangle);
  gtk_widget_set_visible (GTK_WIDGET (form->width), form->is_rectangle);
  gtk_widget_set_visible (GTK_WIDGET (form->gate), form->is_rectangle);
}

void
stead_build_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     build_id)
{
  Form *form = g_new0 (Form, 1);
  SteadForm *dialog;

  form->funds = g_array_new (FALSE, FALSE, sizeof (gint64));
  form->build = build_id == 0 ? stead_build_new (STEAD_BUILD_PEN)
                              : stead_build_repo_get (stead_desk_get_store (desk), build_id, NULL);
  if (form->build == NULL)
    {
      g_array_unref (form->funds);
      g_free (form);
      return;
    }
  /* What was drawn is changed in the drawing. */
  form->is_rectangle = form->build->corners->len == 0;
  dialog = stead_form_new (build_id == 0 ? _("New build") : _("Build"), _("Save build"),
                           build_id != 0 ? _("Delete build") : NULL, save_cb, remove_cb, form, form_free);
  add_fields (form, dialog, desk);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->name));
}
