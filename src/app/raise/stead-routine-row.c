/* stead-routine-row.c - one task of a routine in its dialog. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-routine-row.h"

#include "app/stead-field.h"
#include "app/stead-focus.h"
#include "app/stead-ui.h"

/* In the order of the choices. */
typedef enum
{
  WHEN_EVERY,
  WHEN_AGE,
  WHEN_DEGREE_DAYS,
} When;

struct _SteadRoutineRow
{
  GtkWidget    parent_instance;

  gint64       id;        /* on file; 0: not yet */

  SteadField  *name, *number, *start;
  GtkDropDown *when;
  GtkWidget   *paused;
};

enum { REMOVED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadRoutineRow, stead_routine_row, GTK_TYPE_WIDGET)

static When
present_when (SteadRoutineRow *self)
{
  guint at = gtk_drop_down_get_selected (self->when);

  return at <= WHEN_DEGREE_DAYS ? (When) at : WHEN_EVERY;
}

static void
when_cb (SteadRoutineRow *self)
{
  static const char * const names[] = { N_("Days"), N_("Age in days"), N_("Degree days, °C") };

  g_object_set (self->number, "label", _(names[present_when (self)]), NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->start), present_when (self) == WHEN_EVERY);
}

static void
remove_cb (SteadRoutineRow *self)
{
  g_signal_emit (self, signals[REMOVED], 0);
}

static gboolean
stead_routine_row_grab_focus (GtkWidget *widget)
{
  return stead_focus_part (widget, GTK_WIDGET (STEAD_ROUTINE_ROW (widget)->name));
}

static void
stead_routine_row_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_ROUTINE_ROW);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_routine_row_parent_class)->dispose (object);
}

static void
stead_routine_row_class_init (SteadRoutineRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_routine_row_dispose;
  widget_class->grab_focus = stead_routine_row_grab_focus;
  signals[REMOVED] = g_signal_new ("removed", STEAD_TYPE_ROUTINE_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("raise/stead-routine-row.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadRoutineRow, name);
  gtk_widget_class_bind_template_child (widget_class, SteadRoutineRow, number);
  gtk_widget_class_bind_template_child (widget_class, SteadRoutineRow, start);
  gtk_widget_class_bind_template_child (widget_class, SteadRoutineRow, when);
  gtk_widget_class_bind_template_child (widget_class, SteadRoutineRow, paused);
  gtk_widget_class_bind_template_callback (widget_class, when_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
}

static void
stead_routine_row_init (SteadRoutineRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
stead_routine_row_new (gboolean of_batch,
                       SteadDay today)
{
  SteadRoutineRow *self = g_object_new (STEAD_TYPE_ROUTINE_ROW, NULL);
  g_autoptr(GtkStringList) choices = gtk_string_list_new (NULL);

  gtk_string_list_append (choices, _("every so many days"));
  if (of_batch)
    {
      gtk_string_list_append (choices, _("once, at an age"));
      gtk_string_list_append (choices, _("once, at degree days"));
    }
  gtk_drop_down_set_model (self->when, G_LIST_MODEL (choices));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
  stead_field_set_today (self->start, today);
  stead_field_show_day (self->start, today);
  when_cb (self);
  return GTK_WIDGET (self);
}

void
stead_routine_row_show (SteadRoutineRow    *self,
                        const SteadRoutine *routine)
{
  When when;

  g_return_if_fail (STEAD_IS_ROUTINE_ROW (self) && routine != NULL);

  when = routine->every_days > 0 ? WHEN_EVERY : routine->age_days >= 0 ? WHEN_AGE : WHEN_DEGREE_DAYS;
  self->id = routine->id;
  stead_field_set_text (self->name, routine->name);
  gtk_drop_down_set_selected (self->when, when);
  stead_field_show_number (self->number, when == WHEN_EVERY ? routine->every_days
                                         : when == WHEN_AGE ? routine->age_days : routine->degree_days);
  if (routine->start_on != STEAD_DAY_NONE)
    stead_field_show_day (self->start, routine->start_on);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->paused), routine->paused);
}

/* A number of days is whole. */
static gboolean
put_number (SteadRoutineRow *self,
            double           number,
            SteadRoutine    *routine)
{
  When when = present_when (self);

  if (when == WHEN_DEGREE_DAYS)
    {
      routine->degree_days = number;
      if (number > 0)
        return TRUE;
      stead_field_set_error (self->number, _("Enter more than 0."));
      return FALSE;
    }
  if (!(number >= (when == WHEN_EVERY ? 1 : 0) && number <= 3660 && number == floor (number)))
    {
      stead_field_set_error (self->number, when == WHEN_EVERY ? _("Enter a whole number of 1 to 3,660 days.")
                                                              : _("Enter a whole number of 0 to 3,660 days."));
      return FALSE;
    }
  if (when == WHEN_EVERY)
    routine->every_days = (int) number;
  else
    routine->age_days = (int) number;
  return TRUE;
}

SteadRoutine *
stead_routine_row_read (SteadRoutineRow *self)
{
  g_autoptr(SteadRoutine) routine = stead_routine_new ();
  const char *name = NULL;
  double number = 0;
  gboolean good;

  g_return_val_if_fail (STEAD_IS_ROUTINE_ROW (self), NULL);

  good = stead_field_read_text (self->name, &name);
  good &= stead_field_read_number (self->number, 0, &number);
  if (present_when (self) == WHEN_EVERY)
    good &= stead_field_read_day (self->start, STEAD_DAY_NONE, &routine->start_on);
  if (!good || !put_number (self, number, routine))
    return NULL;
  routine->id = self->id;
  routine->name = g_strstrip (g_strdup (name));
  routine->paused = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->paused));
  return g_steal_pointer (&routine);
}
