/* stead-packet-dialogs.c - a packet, and where its figures come from. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-account-dialog.h"
#include "app/keep/stead-cash-dialog.h"
#include "app/keep/stead-move-dialog.h"
#include "app/stead-form.h"
#include "app/show/stead-learn-dialogs.h"
#include "app/show/stead-section-list.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "store/stead-store-watch.h"

/* --- a packet ------------------------------------------------------------------------- */

typedef struct
{
  GPtrArray   *people;     /* of SteadPerson */
  GPtrArray   *events;     /* of SteadEvent */
  SteadPacket *packet;
  GtkDropDown *whose, *names, *pictures;
  GtkTextView *brief;
  GtkWidget   *sections;
  SteadField  *name, *from, *to;
} PacketForm;

static void
packet_form_free (gpointer data)
{
  PacketForm *form = data;

  g_ptr_array_unref (form->people);
  g_ptr_array_unref (form->events);
  stead_packet_free (form->packet);
  g_free (form);
}

static gboolean
packet_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  SteadPacket *packet = ((PacketForm *) data)->packet;

  stead_store_watch_id (store, &packet->id);
  return stead_packet_repo_save (store, packet, error);
}

static gboolean
packet_save (SteadForm  *form,
             gpointer    data,
             GError    **error)
{
  PacketForm *fields = data;
  SteadPacket *packet = fields->packet;
  guint whose = gtk_drop_down_get_selected (fields->whose);
  gboolean good = stead_field_read_day (fields->from, STEAD_DAY_NONE, &packet->from_on);

  good &= stead_field_read_day (fields->to, STEAD_DAY_NONE, &packet->to_on);
  if (!good)
    return FALSE;
  packet->person_id = whose < fields->people->len ? ((SteadPerson *) fields->people->pdata[whose])->id : 0;
  packet->event_id = whose >= fields->people->len && whose - fields->people->len < fields->events->len
                     ? ((SteadEvent *) fields->events->pdata[whose - fields->people->len])->id : 0;
  g_free (packet->name);
  packet->name = g_strdup (stead_field_get_text (fields->name));
  g_free (packet->brief);
  packet->brief = stead_ui_read_lines (fields->brief);
  packet->with_names = gtk_drop_down_get_selected (fields->names) == 1;
  packet->with_pictures = gtk_drop_down_get_selected (fields->pictures) == 1;
  stead_section_list_read (fields->sections, packet->sections);
  return stead_form_act (form, _("a packet"), packet_act, fields, error);
}

static gboolean
drop_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_packet_repo_drop (store, ((PacketForm *) data)->packet->id, error);
}

static gboolean
packet_remove (SteadForm  *form,
               gpointer    data,
               GError    **error)
{
  return stead_form_act (form, _("deleting a packet"), drop_act, data, error);
}

static guint
whose_at (const PacketForm *form)
{
  for (guint i = 0; i < form->people->len; i++)
    if (((SteadPerson *) form->people->pdata[i])->id == form->packet->person_id)
      return i;
  for (guint i = 0; i < form->events->len; i++)
    if (((SteadEvent *) form->events->pdata[i])->id == form->packet->event_id)
      return form->people->len + i;
  return 0;
}

static GPtrArray *
whose_words (const PacketForm *form)
{
  GPtrArray *words = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < form->people->len; i++)
    g_ptr_array_add (words, g_strdup (((SteadPerson *) form->people->pdata[i])->name));
  for (guint i = 0; i < form->events->len; i++)
    /* Translators: %s is an event. */
    g_ptr_array_add (words, g_strdup_printf (_("Team: %s"), ((SteadEvent *) form->events->pdata[i])->name));
  g_ptr_array_add (words, NULL);
  return words;
}

void
stead_packet_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     packet_id)
{
  const char *answers[] = { C_("whether something is in a packet", "No"), C_("whether something is in a packet", "Yes"),
                            NULL };
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) people = stead_packet_people (store, &error);
  g_autoptr(GPtrArray) events = people != NULL ? stead_event_repo_list (store, &error) : NULL;
  g_autoptr(SteadPacket) packet = NULL;
  g_autoptr(GPtrArray) words = NULL;
  PacketForm *fields;
  SteadForm *form;

  if (events != NULL)
    packet = packet_id != 0 ? stead_packet_repo_get (store, packet_id, &error)
                            : stead_packet_usual (store, stead_store_get_today (store), &error);
  if (packet == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  fields = g_new0 (PacketForm, 1);
  fields->people = g_steal_pointer (&people);
  fields->events = g_steal_pointer (&events);
  fields->packet = g_steal_pointer (&packet);
  words = whose_words (fields);
  form = stead_form_new (_("Packet"), _("Save packet"), packet_id != 0 ? _("Delete packet") : NULL, packet_save,
                         packet_remove, fields, packet_form_free);
  fields->name = stead_form_add (form, desk, _("Name of the packet"), STEAD_FIELD_TEXT);
  fields->whose = stead_form_add_choice (form, _("Of whom"), (const char * const *) words->pdata, whose_at (fields));
  fields->from = stead_form_add (form, desk, _("First day"), STEAD_FIELD_DAY);
  fields->to = stead_form_add (form, desk, _("Last day"), STEAD_FIELD_DAY);
  fields->names = stead_form_add_choice (form, _("Names of others who agreed"), answers, fields->packet->with_names);
  fields->pictures = stead_form_add_choice (form, _("Pictures"), answers, fields->packet->with_pictures);
  fields->brief = stead_form_add_lines (form, _("The work in brief"), fields->packet->brief);
  fields->sections = stead_section_list_new (fields->packet->sections);
  stead_form_add_widget (form, fields->sections);
  stead_field_set_text (fields->name, fields->packet->name != NULL ? fields->packet->name : "");
  stead_field_show_day (fields->from, fields->packet->from_on);
  stead_field_show_day (fields->to, fields->packet->to_on);
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- figures -------------------------------------------------------------------------------- */

typedef struct
{
  int          mark;
  char        *figure, *entry;
  SteadTarget  target;
  gint64       id, line_id, account_id;
  gboolean     is_more;      /* stands for entries that are not listed */
} Line;

static void
line_free (gpointer data)
{
  Line *line = data;

  g_free (line->figure);
  g_free (line->entry);
  g_free (line);
}

static const Line *line_of (gpointer item) { return stead_row_get (STEAD_ROW (item)); }
static char *mark_text (gpointer item, gpointer data) { return g_strdup_printf ("%d", line_of (item)->mark); }
static char *figure_text (gpointer item, gpointer data) { return g_strdup (line_of (item)->figure); }
static char *entry_text (gpointer item, gpointer data) { return g_strdup (line_of (item)->entry); }

/* Money that was moved from one account to another is two lines and one card. */
static void
open_cash_line (GtkWidget *window,
                SteadDesk *desk,
                gint64     id)
{
  g_autoptr(SteadCashLine) line = stead_cash_repo_get (stead_desk_get_store (desk), id, NULL);

  if (line != NULL && line->pair_id != 0)
    stead_move_dialog_show (window, desk, id, 0);
  else
    stead_cash_dialog_show (window, desk, id);
}

typedef struct
{
  SteadPacketAnswer *answer;
  SteadDesk         *desk;
  SteadTable        *table;
  int                mark;     /* whose entries are shown; 0: of all */
} Figures;

/* What has a card of its own opens over the list; for the rest we go to its place. */
static void
row_cb (gpointer item,
        gpointer data)
{
  const Line *line = line_of (item);
  SteadDesk *desk = ((Figures *) g_object_get_data (G_OBJECT (data), "figures"))->desk;

  if (line->line_id != 0)
    open_cash_line (data, desk, line->line_id);
  else if (line->account_id != 0)
    stead_account_dialog_show (data, desk, line->account_id, STEAD_ACCOUNT_TILL);
  else if (line->target == STEAD_TARGET_NONE && line->is_more)
    stead_dialog_show_error (data, _("These are too many to list here. The statements in Keep have them all."));
  else if (line->target == STEAD_TARGET_NONE)
    stead_dialog_show_error (data, _("This is the sum of all the days before. The statements in Keep have its entries."));
  if (line->target == STEAD_TARGET_NONE)
    return;
  stead_desk_jump (desk, line->target, line->id);
  gtk_window_close (GTK_WINDOW (data));
}

static Line *
line_new (const SteadPacketFigure *figure,
          char                    *entry)
{
  Line *line = g_new0 (Line, 1);

  line->mark = figure->mark;
  line->figure = g_strdup (figure->text);
  line->entry = entry;
  return line;
}

/* What is not listed is counted, and leads to where it is. */
static Line *
line_of_more (const SteadPacketFigure *figure)
{
  const SteadPacketEntry *last = figure->entries->pdata[figure->entries->len - 1];
  guint n = figure->n_entries - figure->entries->len;
  Line *line = line_new (figure, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "and %u more", "and %u more", n), n));

  line->is_more = TRUE;
  if (last->target == STEAD_TARGET_BATCH || last->target == STEAD_TARGET_HOURS)
    {
      line->target = last->target;
      line->id = last->id;
    }
  return line;
}

static void
add_lines (GPtrArray               *lines,
           const SteadPacketFigure *figure)
{
  for (guint i = 0; i < figure->entries->len; i++)
    {
      const SteadPacketEntry *entry = figure->entries->pdata[i];
      Line *line = line_new (figure, g_strdup (entry->text));

      line->target = entry->target;
      line->id = entry->id;
      line->line_id = entry->line_id;
      line->account_id = entry->account_id;
      g_ptr_array_add (lines, line);
    }
  if (figure->n_entries > figure->entries->len && figure->entries->len > 0)
    g_ptr_array_add (lines, line_of_more (figure));
}

/* @mark: 0: all of them */
static GListModel *
figures_of (const SteadPacketAnswer *answer,
            int                      mark)
{
  GPtrArray *lines = g_ptr_array_new ();

  for (guint i = 0; i < answer->parts->len; i++)
    {
      const SteadPacketPart *part = answer->parts->pdata[i];

      for (guint k = 0; k < part->figures->len; k++)
        if (mark == 0 || ((const SteadPacketFigure *) part->figures->pdata[k])->mark == mark)
          add_lines (lines, part->figures->pdata[k]);
    }
  return stead_rows_from_array (lines, line_free);
}

static void
figures_free (gpointer data)
{
  Figures *self = data;

  stead_packet_answer_free (self->answer);
  g_object_unref (self->desk);
  g_free (self);
}

static void
show_figures (Figures *self,
              int      mark)
{
  g_autoptr(GListModel) rows = figures_of (self->answer, mark);

  self->mark = mark;
  stead_table_set_model (self->table, rows);
}

/* A number is a mark, as it stands on the paper; anything else is looked for in all cells. */
static void
sought_cb (GtkEditable *entry,
           Figures     *self)
{
  const char *text = gtk_editable_get_text (entry);
  gint64 mark = 0;
  gboolean is_mark = g_ascii_string_to_signed (text, 10, 1, G_MAXINT, &mark, NULL);

  if (self->mark != (is_mark ? (int) mark : 0))
    show_figures (self, is_mark ? (int) mark : 0);
  stead_table_set_filter (self->table, is_mark || *text == '\0' ? NULL : text);
}

/* There is nothing to save. */
static gboolean
look_only (SteadForm  *form,
           gpointer    data,
           GError    **error)
{
  return TRUE;
}

static GtkWidget *
make_figures (Figures   *self,
              GtkWidget *window)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12), *entry = gtk_search_entry_new ();

  stead_ui_name (entry, _("Find a mark or a figure"));
  g_object_set (entry, "placeholder-text", _("The number of a mark, or words"), NULL);
  gtk_widget_set_halign (entry, GTK_ALIGN_START);
  gtk_widget_set_size_request (entry, 280, -1);
  g_signal_connect (entry, "search-changed", G_CALLBACK (sought_cb), self);
  /* The entry keeps Escape to itself. */
  g_signal_connect_swapped (entry, "stop-search", G_CALLBACK (gtk_window_close), window);
  self->table = STEAD_TABLE (stead_table_new (_("Figures and their entries")));
  stead_table_add_column (self->table, C_("column of marks", "Mark"), TRUE, FALSE, mark_text, NULL, NULL, NULL);
  stead_table_add_column (self->table, C_("column of marks", "Figure"), FALSE, TRUE, figure_text, NULL, NULL, NULL);
  stead_table_add_column (self->table, C_("column of marks", "Entry"), FALSE, TRUE, entry_text, NULL, NULL, NULL);
  stead_table_set_empty (self->table, _("This packet has no such figure."));
  stead_table_set_activate (self->table, row_cb, window);
  gtk_widget_set_size_request (GTK_WIDGET (self->table), -1, 300);
  gtk_widget_set_vexpand (GTK_WIDGET (self->table), TRUE);
  gtk_box_append (GTK_BOX (box), entry);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->table));
  return box;
}

void
stead_figures_window_show (GtkWidget *parent,
                           SteadDesk *desk,
                           gint64     packet_id)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPacketAnswer) answer = stead_packet_answer_new (stead_desk_get_store (desk), packet_id, NULL, &error);
  GtkWidget *window;
  Figures *self;

  if (answer == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_new0 (Figures, 1);
  self->answer = g_steal_pointer (&answer);
  self->desk = g_object_ref (desk);
  window = GTK_WIDGET (stead_form_new (_("Figures of the packet"), NULL, NULL, look_only, NULL, self, figures_free));
  g_object_set_data (G_OBJECT (window), "figures", self);
  gtk_window_set_default_size (GTK_WINDOW (window), 960, 540);
  g_object_set (window, "content", make_figures (self, window), NULL);
  show_figures (self, 0);
  stead_dialog_present (STEAD_DIALOG (window), parent, desk);
}
