/* stead-line-entry.c - the one-line entry.
 *
 * Invariants:
 *  1. What Return records is what the words under the entry say.
 *  2. A line that could not be recorded stays as it was typed.
 *  3. The list of completions never takes the focus; Down goes into it, Escape
 *     puts it away, and what was typed comes back when nothing is chosen.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-line-answer.h"
#include "answer/stead-words.h"
#include "app/stead-draft.h"
#include "app/stead-focus.h"
#include "app/stead-ui.h"
#include "app/today/stead-line-entry.h"

struct _SteadLineEntry
{
  GtkWidget         parent_instance;

  GtkWidget        *box;
  GtkWidget        *entry;
  GtkWidget        *record;
  GtkWidget        *understood;
  GtkWidget        *popover;
  GtkWidget        *list;

  SteadDesk        *desk;
  SteadLineReader  *reader;     /* (nullable) */
  SteadLineReading *reading;    /* (nullable): of what stands there */
  gboolean          quiet;      /* the code is typing, not the person */
};

G_DEFINE_FINAL_TYPE (SteadLineEntry, stead_line_entry, GTK_TYPE_WIDGET)

static const char *
typed (SteadLineEntry *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->entry));
}

/* --- reading back -------------------------------------------------------------------- */

static void
say (SteadLineEntry *self,
     const char     *markup,
     gboolean        wrong)
{
  g_autofree char *plain = stead_words_plain (markup);

  gtk_label_set_markup (GTK_LABEL (self->understood), markup);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, plain, -1);
  if (wrong)
    gtk_widget_add_css_class (self->understood, "warn");
  else
    gtk_widget_remove_css_class (self->understood, "warn");
}

static void
say_error (SteadLineEntry *self,
           const char     *text)
{
  g_autofree char *markup = g_markup_escape_text (text, -1);

  say (self, markup, TRUE);
}

/* The word that was not understood is underlined where it stands. */
static void
underline (SteadLineEntry *self,
           int             start,
           int             end)
{
  g_autoptr(PangoAttrList) attributes = pango_attr_list_new ();
  PangoAttribute *line;

  if (start >= 0 && end > start)
    {
      line = pango_attr_underline_new (PANGO_UNDERLINE_ERROR);
      line->start_index = (guint) start;
      line->end_index = (guint) end;
      pango_attr_list_insert (attributes, line);
    }
  gtk_entry_set_attributes (GTK_ENTRY (self->entry), attributes);
}

static void
read_line (SteadLineEntry *self)
{
  SteadStore *store = self->desk != NULL ? stead_desk_get_store (self->desk) : NULL;
  gboolean empty = *typed (self) == '\0';

  g_clear_pointer (&self->reading, stead_line_reading_free);
  if (!empty && self->reader != NULL && store != NULL)
    self->reading = stead_line_reader_read (self->reader, typed (self), stead_store_get_today (store));
  gtk_widget_set_sensitive (self->record, self->reading != NULL && self->reading->complete);
  if (self->reading == NULL)
    {
      underline (self, -1, -1);
      g_autofree char *hint = self->reader != NULL ? stead_line_reader_hint (self->reader) : NULL;

      say (self, hint != NULL ? hint : "", FALSE);
      return;
    }
  underline (self, self->reading->error_start, self->reading->error_end);
  say (self, self->reading->understood, !self->reading->complete);
}

/* --- completions ------------------------------------------------------------------------ */

static void
hide_completions (SteadLineEntry *self)
{
  if (gtk_widget_get_visible (self->popover))
    gtk_popover_popdown (GTK_POPOVER (self->popover));
}

static void
clear_list (SteadLineEntry *self)
{
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (self->list)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), row);
}

static void
add_completion (SteadLineEntry *self,
                const char     *line)
{
  GtkWidget *label = gtk_label_new (line);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_list_box_append (GTK_LIST_BOX (self->list), label);
}

static void
show_completions (SteadLineEntry *self)
{
  g_auto(GStrv) lines = NULL;

  clear_list (self);
  if (self->reader != NULL && *typed (self) != '\0')
    lines = stead_line_reader_complete (self->reader, typed (self));
  for (guint i = 0; lines != NULL && lines[i] != NULL; i++)
    if (g_strcmp0 (lines[i], typed (self)) != 0)
      add_completion (self, lines[i]);
  if (gtk_widget_get_first_child (self->list) == NULL)
    hide_completions (self);
  else if (gtk_widget_get_mapped (self->entry))
    gtk_popover_popup (GTK_POPOVER (self->popover));
}

static void
type (SteadLineEntry *self,
      const char     *line)
{
  self->quiet = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), line);
  gtk_editable_set_position (GTK_EDITABLE (self->entry), -1);
  self->quiet = FALSE;
  read_line (self);
}

static const char *
row_line (GtkListBoxRow *row)
{
  return gtk_label_get_text (GTK_LABEL (gtk_list_box_row_get_child (row)));
}

static void
take_completion (SteadLineEntry *self,
                 GtkListBoxRow  *row)
{
  g_autofree char *line = g_strdup (row_line (row));

  hide_completions (self);
  type (self, line);
  gtk_widget_grab_focus (self->entry);
}

static void
row_activated_cb (SteadLineEntry *self,
                  GtkListBoxRow  *row)
{
  take_completion (self, row);
}

static gboolean
move_in_list (SteadLineEntry *self,
              int             by)
{
  GtkListBoxRow *now = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));
  int index = now != NULL ? gtk_list_box_row_get_index (now) + by : (by > 0 ? 0 : -1);
  GtkListBoxRow *next = index >= 0 ? gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), index) : NULL;

  if (next == NULL && by > 0)
    return GDK_EVENT_STOP;
  gtk_list_box_select_row (GTK_LIST_BOX (self->list), next);
  if (next != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry),
                                    GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, row_line (next), -1);
  return GDK_EVENT_STOP;
}

/* --- what the person does --------------------------------------------------------------- */

static void
changed_cb (SteadLineEntry *self)
{
  if (self->quiet)
    return;
  read_line (self);
  show_completions (self);
}

/* The name that the menu will give the step; the reading's action has named it. */
static void
say_recorded (SteadLineEntry *self,
              SteadStore     *store)
{
  g_autofree char *name = stead_store_get_undo_name (store);
  g_autofree char *text = NULL;

  if (name == NULL)
    return;
  /* Translators: %s is what was done, as in the menu: "22 eggs on March 3". */
  text = g_strdup_printf (_("Saved: %s."), name);
  stead_desk_say (self->desk, text, TRUE);
}

static void
record (SteadLineEntry *self)
{
  SteadStore *store = self->desk != NULL ? stead_desk_get_store (self->desk) : NULL;
  g_autoptr(SteadLineReading) reading = NULL;
  g_autoptr(GError) error = NULL;

  hide_completions (self);
  if (store == NULL || self->reading == NULL || !self->reading->complete)
    return;
  /* Recording refreshes this entry too, which reads the line again. */
  reading = g_steal_pointer (&self->reading);
  if (!stead_line_reading_record (reading, store, &error))
    {
      self->reading = g_steal_pointer (&reading);
      say_error (self, error->message);
      return;
    }
  type (self, "");
  gtk_widget_grab_focus (self->entry);
  say_recorded (self, store);
}

static void
activate_cb (SteadLineEntry *self)
{
  GtkListBoxRow *row = gtk_widget_get_visible (self->popover)
                       ? gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list)) : NULL;

  if (row != NULL)
    take_completion (self, row);
  else
    record (self);
}

static gboolean
key_cb (SteadLineEntry *self,
        guint           keyval)
{
  if (!gtk_widget_get_visible (self->popover))
    return GDK_EVENT_PROPAGATE;
  if (keyval == GDK_KEY_Down || keyval == GDK_KEY_KP_Down)
    return move_in_list (self, 1);
  if (keyval == GDK_KEY_Up || keyval == GDK_KEY_KP_Up)
    return move_in_list (self, -1);
  if (keyval != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  hide_completions (self);
  return GDK_EVENT_STOP;
}

/* --- the object --------------------------------------------------------------------------- */

static gboolean
stead_line_entry_grab_focus (GtkWidget *widget)
{
  return stead_focus_part (widget, STEAD_LINE_ENTRY (widget)->entry);
}

static void
stead_line_entry_dispose (GObject *object)
{
  SteadLineEntry *self = STEAD_LINE_ENTRY (object);

  g_clear_pointer (&self->popover, gtk_widget_unparent);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->reading, stead_line_reading_free);
  g_clear_pointer (&self->reader, stead_line_reader_free);
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_line_entry_parent_class)->dispose (object);
}

static void
stead_line_entry_class_init (SteadLineEntryClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_line_entry_dispose;
  widget_class->grab_focus = stead_line_entry_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lineentry");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
make_popover (SteadLineEntry *self)
{
  self->list = gtk_list_box_new ();
  gtk_list_box_set_activate_on_single_click (GTK_LIST_BOX (self->list), TRUE);
  gtk_widget_set_focusable (self->list, FALSE);
  stead_ui_name (self->list, _("Ways to go on"));
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (row_activated_cb), self);
  self->popover = gtk_popover_new ();
  gtk_widget_add_css_class (self->popover, "steading");
  gtk_popover_set_autohide (GTK_POPOVER (self->popover), FALSE);
  gtk_popover_set_has_arrow (GTK_POPOVER (self->popover), FALSE);
  gtk_popover_set_position (GTK_POPOVER (self->popover), GTK_POS_BOTTOM);
  gtk_widget_set_halign (self->popover, GTK_ALIGN_START);
  gtk_widget_set_can_focus (self->popover, FALSE);
  gtk_popover_set_child (GTK_POPOVER (self->popover), self->list);
  gtk_widget_set_parent (self->popover, GTK_WIDGET (self));
}

static void
make_row (SteadLineEntry *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->entry = gtk_entry_new ();
  gtk_widget_set_hexpand (self->entry, TRUE);
  gtk_widget_add_css_class (self->entry, "big");
  stead_ui_name (self->entry, _("What happened"));
  self->record = gtk_button_new_with_label (_("Record"));
  gtk_widget_add_css_class (self->record, "primary");
  gtk_box_append (GTK_BOX (row), self->entry);
  gtk_box_append (GTK_BOX (row), self->record);
  gtk_box_append (GTK_BOX (self->box), row);
}

static void
stead_line_entry_init (SteadLineEntry *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  make_row (self);
  self->understood = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->understood), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->understood), 0);
  gtk_widget_add_css_class (self->understood, "understood");
  gtk_box_append (GTK_BOX (self->box), self->understood);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  make_popover (self);

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (self->entry, keys);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (hide_completions), self);
  gtk_widget_add_controller (self->entry, focus);
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect_swapped (self->record, "clicked", G_CALLBACK (record), self);
  stead_draft_watch (GTK_WIDGET (self), &self->entry, 1);
  stead_draft_name (GTK_WIDGET (self), C_("place", "Today"));
  read_line (self);
}

GtkWidget *
stead_line_entry_new (void)
{
  return g_object_new (STEAD_TYPE_LINE_ENTRY, NULL);
}

void
stead_line_entry_set_desk (SteadLineEntry *self,
                           SteadDesk      *desk)
{
  g_return_if_fail (STEAD_IS_LINE_ENTRY (self));
  g_return_if_fail (STEAD_IS_DESK (desk));

  g_set_object (&self->desk, desk);
  stead_line_entry_refresh (self);
}

void
stead_line_entry_refresh (SteadLineEntry *self)
{
  SteadStore *store;

  g_return_if_fail (STEAD_IS_LINE_ENTRY (self));

  store = self->desk != NULL ? stead_desk_get_store (self->desk) : NULL;
  g_clear_pointer (&self->reader, stead_line_reader_free);
  if (store != NULL)
    self->reader = stead_line_reader_new (store, NULL);
  read_line (self);
}
