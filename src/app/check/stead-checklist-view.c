/* stead-checklist-view.c - one checklist: what stops, what is held, its lines, and the signature.
 *
 * What cannot be sold as planned stands before all else.  Lines stand food by food, in
 * the order of the work; what goes for the whole kitchen comes before and after them.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "app/check/stead-checklist-view-private.h"

#include "app/check/stead-ask-dialog.h"
#include "app/check/stead-check-row.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-ui.h"

enum { POTS, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadChecklistView, stead_checklist_view, GTK_TYPE_WIDGET)

/* --- lines -------------------------------------------------------------------------------- */

/* What goes for the whole kitchen comes before the foods, or after them. */
static int
part_of (const SteadCheckedLine *line)
{
  if (line->line->food >= 0)
    return 1 + line->line->food;
  return line->known && line->plan.stage >= STEAD_CHECK_STAGE_COOK ? G_MAXINT : 0;
}

static int
compare_lines (gconstpointer a,
               gconstpointer b)
{
  const SteadCheckedLine *one = *(const SteadCheckedLine * const *) a, *two = *(const SteadCheckedLine * const *) b;
  int by_part = (part_of (one) > part_of (two)) - (part_of (one) < part_of (two));

  if (by_part != 0)
    return by_part;
  if (one->known && two->known && one->plan.stage != two->plan.stage)
    return one->plan.stage < two->plan.stage ? -1 : 1;
  return (one->line->id > two->line->id) - (one->line->id < two->line->id);
}

/* Return and "Done" lead on to the next line about which something is to be done. */
static void
saved_cb (SteadChecklistView *self,
          SteadCheckRow      *row)
{
  guint at = 0;

  if (!g_ptr_array_find (self->rows, row, &at))
    return;
  if (stead_check_row_is_open (row) && gtk_widget_get_visible (GTK_WIDGET (row)))
    return;
  for (guint i = 1; i < self->rows->len; i++)
    {
      SteadCheckRow *next = self->rows->pdata[(at + i) % self->rows->len];

      if (stead_check_row_is_open (next))
        {
          stead_check_row_carry (row, next);
          stead_check_row_focus (next);
          return;
        }
    }
  gtk_widget_grab_focus (self->sign);
}

static void
pots_cb (SteadChecklistView *self,
         SteadCheckRow      *row)
{
  g_signal_emit (self, signals[POTS], 0, stead_check_row_get_id (row));
}

static GtkWidget *
add_card (SteadChecklistView     *self,
          const SteadCheckedLine *line)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  int part = part_of (line);
  const char *head = part == 0 ? _("The whole kitchen, before") : part == G_MAXINT ? _("The whole kitchen, after")
                     : line->food != NULL ? line->food : "";

  gtk_widget_add_css_class (card, "card");
  gtk_box_append (GTK_BOX (card), stead_make_label (head, "title"));
  gtk_box_append (GTK_BOX (self->lines), card);
  return card;
}

static void
build_lines (SteadChecklistView *self,
             GPtrArray          *lines)
{
  GtkWidget *card = NULL;
  int part = -1, stage = -1;

  g_ptr_array_set_size (self->rows, 0);
  stead_make_clear (self->lines);
  for (guint i = 0; i < lines->len; i++)
    {
      const SteadCheckedLine *line = lines->pdata[i];
      GtkWidget *row = stead_check_row_new (self->desk, self->person, self->instrument);

      if (part_of (line) != part)
        {
          card = add_card (self, line);
          part = part_of (line);
          stage = -1;
        }
      if (line->known && (int) line->plan.stage != stage)
        {
          gtk_box_append (GTK_BOX (card), stead_make_label (stead_check_stage_name (line->plan.stage), "heading"));
          stage = (int) line->plan.stage;
        }
      g_signal_connect_object (row, "saved", G_CALLBACK (saved_cb), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (row, "pots", G_CALLBACK (pots_cb), self, G_CONNECT_SWAPPED);
      gtk_box_append (GTK_BOX (card), row);
      g_ptr_array_add (self->rows, row);
    }
}

/* Rows stay as long as the lines are the same, so that nothing typed is lost. */
static void
show_lines (SteadChecklistView *self)
{
  g_autoptr(GPtrArray) lines = g_ptr_array_new ();
  g_autoptr(GString) form = g_string_new (NULL);

  for (guint i = 0; i < self->answer->lines->len; i++)
    g_ptr_array_add (lines, self->answer->lines->pdata[i]);
  g_ptr_array_sort (lines, compare_lines);
  for (guint i = 0; i < lines->len; i++)
    g_string_append_printf (form, "%" G_GINT64_FORMAT " ", ((const SteadCheckedLine *) lines->pdata[i])->line->id);
  if (g_strcmp0 (self->form, form->str) != 0)
    {
      build_lines (self, lines);
      g_free (self->form);
      self->form = g_strdup (form->str);
    }
  for (guint i = 0; i < lines->len; i++)
    stead_check_row_show (self->rows->pdata[i], self->answer, lines->pdata[i], (int) i + 1);
}

/* --- buttons ---------------------------------------------------------------------------------- */

static void
renew_cb (SteadChecklistView *self)
{
  stead_ask_dialog_show_renew (GTK_WIDGET (self), self->desk, self->list_id);
}

static void
paper_cb (SteadChecklistView *self)
{
  stead_paper_dialog_show (GTK_WIDGET (self), self->desk, "checklist", self->answer->list->name);
}

static void
blank_cb (SteadChecklistView *self)
{
  stead_paper_dialog_show (GTK_WIDGET (self), self->desk, "checklist-blank", self->answer->list->name);
}

typedef struct
{
  gint64 id, person_id;
} Sign;

static gboolean
delete_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_check_repo_delete (store, ((const Sign *) data)->id, error);
}

static void
delete_cb (SteadChecklistView *self)
{
  Sign act = { self->list_id, 0 };
  g_autoptr(GError) error = NULL;
  /* Translators: a step that can be undone; the name of a checklist follows. */
  g_autofree char *step = g_strdup_printf (_("deleting the checklist “%s”"), self->answer->list->name);

  if (!stead_desk_act (self->desk, step, delete_act, &act, &error))
    stead_make_say (self->trouble, error->message, FALSE);
}

static gboolean
sign_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  const Sign *sign = data;

  return stead_check_repo_sign (store, sign->id, sign->person_id, error);
}

static void
sign_cb (SteadChecklistView *self)
{
  Sign sign = { self->list_id, stead_person_pick_get (self->signer) };
  g_autoptr(GError) error = NULL;
  /* Translators: a step that can be undone; the name of a checklist follows. */
  g_autofree char *step = g_strdup_printf (_("the signature on “%s”"), self->answer->list->name);

  if (!stead_desk_act (self->desk, step, sign_act, &sign, &error))
    {
      /* What is missing is named one by one; else who signs, and there the keys go. */
      gboolean whole = self->answer->missing == NULL;

      stead_make_say (self->missing, whole ? error->message : self->answer->missing, FALSE);
      gtk_widget_grab_focus (whole && sign.person_id == 0 ? GTK_WIDGET (self->signer) : self->sign);
    }
}

/* --- showing ------------------------------------------------------------------------------------- */

static void
fill_instruments (SteadChecklistView *self)
{
  gint64 chosen = stead_pick_get (self->instrument);

  stead_pick_clear (self->instrument);
  stead_pick_append (self->instrument, 0, _("not said"));
  for (guint i = 0; i < self->answer->instruments->len; i++)
    {
      const SteadInstrument *instrument = self->answer->instruments->pdata[i];

      if (instrument->kind == STEAD_INSTRUMENT_PROBE && instrument->retired_on == STEAD_DAY_NONE)
        stead_pick_append (self->instrument, instrument->id, instrument->name);
    }
  stead_pick_show (self->instrument, chosen);
  gtk_widget_set_visible (GTK_WIDGET (self->instrument), stead_pick_count (self->instrument) > 1);
}

static void
show_answer (SteadChecklistView *self)
{
  SteadCheckAnswer *answer = self->answer;
  gboolean open = answer->list->signed_at == STEAD_TIME_NONE;
  g_autofree char *day = stead_day_format (answer->list->day, STEAD_DAY_STYLE_MEDIUM);
  /* A kitchen batch bears its day in its name.  Translators: the name of a checklist, its day. */
  g_autofree char *title = strstr (answer->list->name, day) != NULL ? g_strdup (answer->list->name)
                           : g_strdup_printf (C_("checklist", "%s, %s"), answer->list->name, day);

  gtk_label_set_text (self->title, title);
  stead_make_say (self->sentence, answer->sentence, TRUE);
  stead_make_say (self->caution, answer->caution, FALSE);
  stead_make_say (self->stale, answer->stale, FALSE);
  stead_make_say (self->trouble, NULL, FALSE);
  stead_make_say (self->signed_by, answer->signed_by, FALSE);
  stead_make_say (self->missing, open ? answer->missing : NULL, FALSE);
  gtk_widget_set_visible (self->stale_card, open && answer->stale != NULL);
  gtk_widget_set_visible (self->delete, open);
  gtk_widget_set_visible (self->renew, open);
  gtk_widget_set_visible (self->sign_box, open);
  stead_person_pick_fill (self->person, stead_desk_get_store (self->desk));
  stead_person_pick_fill (self->signer, stead_desk_get_store (self->desk));
  fill_instruments (self);
  stead_checklist_view_show_stops (self);
  show_lines (self);
}

void
stead_checklist_view_show (SteadChecklistView *self,
                           SteadDesk          *desk,
                           gint64              list_id)
{
  g_autoptr(GError) error = NULL;
  SteadCheckAnswer *answer, *old;

  g_return_if_fail (STEAD_IS_CHECKLIST_VIEW (self));

  g_set_object (&self->desk, desk);
  answer = stead_check_answer_new (stead_desk_get_store (desk), list_id, &error);
  gtk_widget_set_sensitive (self->buttons, answer != NULL);
  if (answer == NULL)
    {
      gtk_label_set_text (self->sentence, error->message);
      return;
    }
  if (self->list_id != list_id)
    gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller)), 0);
  self->list_id = list_id;
  /* The rows still point into the old one. */
  old = self->answer;
  self->answer = answer;
  show_answer (self);
  stead_check_answer_free (old);
}

/* --- the object ------------------------------------------------------------------------------------ */

static void
stead_checklist_view_dispose (GObject *object)
{
  SteadChecklistView *self = STEAD_CHECKLIST_VIEW (object);

  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_CHECKLIST_VIEW);
  stead_ui_drop_children (GTK_WIDGET (object));
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->answer, stead_check_answer_free);
  g_clear_pointer (&self->form, g_free);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_checklist_view_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, buttons);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, caution);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, delete);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, holds);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, instrument);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, lines);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, missing);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, person);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, renew);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, scroller);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, sign);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, sign_box);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, signed_by);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, signer);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, stale);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, stale_card);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, stops);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, title);
  gtk_widget_class_bind_template_child (widget_class, SteadChecklistView, trouble);
}

static void
stead_checklist_view_class_init (SteadChecklistViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_PERSON_PICK);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_checklist_view_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("check/stead-checklist-view.ui"));
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, blank_cb);
  gtk_widget_class_bind_template_callback (widget_class, delete_cb);
  gtk_widget_class_bind_template_callback (widget_class, paper_cb);
  gtk_widget_class_bind_template_callback (widget_class, renew_cb);
  gtk_widget_class_bind_template_callback (widget_class, sign_cb);
  signals[POTS] = g_signal_new ("pots", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_INT64);
}

static void
stead_checklist_view_init (SteadChecklistView *self)
{
  self->rows = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_person_pick_set_label (self->person, _("Read by"));
  stead_person_pick_set_above (self->person);
  stead_person_pick_set_label (self->signer, _("Signed by"));
}
