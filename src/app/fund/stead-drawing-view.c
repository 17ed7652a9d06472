/* stead-drawing-view.c - the drawing of a build, room for its animals, and its cautions. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/fund/stead-drawing-view.h"
#include "app/fund/stead-fund-dialogs.h"
#include "app/fund/stead-outline-view.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-ui.h"
#include "app/stead-wrap-layout.h"

/* Width of what stands beside the drawing, in letters. */
#define SIDE_CHARS 40

struct _SteadDrawingView
{
  GtkWidget         parent_instance;

  SteadDesk        *desk;        /* (nullable) */
  gint64            build_id;
  SteadOutlineView *plan;
  GtkWidget        *drawn, *shelter, *more, *less, *room, *rooms, *care, *cautions;
};

G_DEFINE_FINAL_TYPE (SteadDrawingView, stead_drawing_view, GTK_TYPE_WIDGET)

enum { SENTENCE, N_SIGNALS };
static guint signals[N_SIGNALS];

/* --- what is shown ------------------------------------------------------------------- */

static char *
room_text (const SteadBuildRoom *room)
{
  if (room->has == NULL)
    /* Translators: what animals need, and how much. */
    return g_strdup_printf (_("%s: %s"), room->what, room->need);
  if (room->is_short)
    /* Translators: room for animals, what is needed, what the plan has. */
    return g_strdup_printf (_("⚠ %s: needs %s, has %s"), room->what, room->need, room->has);
  return g_strdup_printf (_("✓ %s: needs %s, has %s"), room->what, room->need, room->has);
}

/* Beside the drawing, which gets what is left. */
static void
add_text (GtkWidget  *box,
          const char *text,
          const char *css)
{
  GtkWidget *label = stead_make_label (text, css);

  gtk_label_set_max_width_chars (GTK_LABEL (label), SIDE_CHARS);
  gtk_widget_set_hexpand (label, FALSE);
  gtk_box_append (GTK_BOX (box), label);
}

static void
show_rooms (SteadDrawingView       *self,
            const SteadBuildAnswer *answer)
{
  stead_make_clear (self->rooms);
  for (guint i = 0; i < answer->rooms->len; i++)
    {
      const SteadBuildRoom *room = answer->rooms->pdata[i];
      g_autofree char *text = room_text (room);

      add_text (self->rooms, text, room->is_short ? "warn" : NULL);
    }
  gtk_widget_set_visible (self->room, answer->rooms->len > 0);
}

static void
show_cautions (SteadDrawingView       *self,
               const SteadBuildAnswer *answer)
{
  stead_make_clear (self->cautions);
  for (guint i = 0; i < answer->cautions->len; i++)
    add_text (self->cautions, answer->cautions->pdata[i], "caution");
  gtk_widget_set_visible (self->care, answer->cautions->len > 0);
}

static void
show_answer (SteadDrawingView       *self,
             const SteadBuildAnswer *answer)
{
  show_rooms (self, answer);
  show_cautions (self, answer);
}

void
stead_drawing_view_show (SteadDrawingView       *self,
                         SteadDesk              *desk,
                         const SteadBuildAnswer *answer)
{
  const SteadBuild *build = answer->build;

  g_return_if_fail (STEAD_IS_DRAWING_VIEW (self) && STEAD_IS_DESK (desk));
  g_set_object (&self->desk, desk);
  self->build_id = build->id;
  stead_outline_view_set (self->plan, build, answer->farm->units);
  gtk_widget_set_visible (self->drawn, build->kind != STEAD_BUILD_LIST);
  gtk_widget_set_visible (self->shelter, build->kind == STEAD_BUILD_PEN);
  gtk_widget_set_visible (self->more, build->kind == STEAD_BUILD_PEN);
  gtk_widget_set_visible (self->less, build->kind == STEAD_BUILD_PEN && build->corners->len > 3);
  show_answer (self, answer);
}

/* --- what is done -------------------------------------------------------------------- */

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_build_repo_save (store, data, error);
}

static void
save (SteadDrawingView *self,
      SteadBuild       *build,
      const char       *step)
{
  g_autoptr(GError) error = NULL;

  if (stead_desk_act (self->desk, step, save_act, build, &error))
    return;
  stead_desk_say (self->desk, error->message, FALSE);
  /* What cannot be built goes back to what is in the file. */
  {
    g_autoptr(SteadBuildAnswer) answer = stead_build_answer_new (stead_desk_get_store (self->desk), self->build_id, NULL);

    if (answer == NULL)
      return;
    stead_drawing_view_show (self, self->desk, answer);
    g_signal_emit (self, signals[SENTENCE], 0, answer->sentence);
  }
}

static void
moving_cb (SteadDrawingView *self)
{
  const SteadBuild *build = stead_outline_view_get (self->plan);
  g_autoptr(SteadBuildAnswer) answer = build == NULL ? NULL
    : stead_build_answer_draw (stead_desk_get_store (self->desk), build, NULL);

  if (answer == NULL)
    return;
  show_answer (self, answer);
  g_signal_emit (self, signals[SENTENCE], 0, answer->sentence);
}

static void
drawn_cb (SteadDrawingView *self)
{
  g_autoptr(SteadBuild) build = stead_build_copy (stead_outline_view_get (self->plan));
  /* Translators: name of a step to undo; name of a build. */
  g_autofree char *step = g_strdup_printf (_("plan of “%s”"), build->name);

  save (self, build, step);
}

static SteadBuild *
read_build (SteadDrawingView *self)
{
  return stead_build_repo_get (stead_desk_get_store (self->desk), self->build_id, NULL);
}

/* Its length along the plan. */
static double
side_m (const SteadBuild *build,
        guint             i)
{
  const SteadBuildCorner *a = &g_array_index (build->corners, SteadBuildCorner, i);
  const SteadBuildCorner *b = &g_array_index (build->corners, SteadBuildCorner, (i + 1) % build->corners->len);

  return hypot (b->x_m - a->x_m, b->y_m - a->y_m);
}

/* A gate beyond the middle of the side belongs to its second half now. */
static void
move_gates (SteadBuild *build,
            guint       side,
            double      half_m)
{
  for (guint i = 0; i < build->gates->len; i++)
    {
      SteadFenceGate *gate = &g_array_index (build->gates, SteadFenceGate, i);

      if (gate->side < side || (gate->side == side && gate->offset_m < half_m))
        continue;
      gate->offset_m -= gate->side == side ? half_m : 0;
      gate->side++;
    }
}

/* A corner in the middle of the longest side; each half rises half as much. */
static void
corner_cb (SteadDrawingView *self)
{
  g_autoptr(SteadBuild) build = read_build (self);
  SteadBuildCorner *a, middle;
  const SteadBuildCorner *b;
  guint longest = 0;

  if (build == NULL || build->corners->len < 3)
    return;
  for (guint i = 1; i < build->corners->len; i++)
    if (side_m (build, i) > side_m (build, longest) + 1e-9)
      longest = i;
  move_gates (build, longest, side_m (build, longest) / 2);
  a = &g_array_index (build->corners, SteadBuildCorner, longest);
  b = &g_array_index (build->corners, SteadBuildCorner, (longest + 1) % build->corners->len);
  middle = (SteadBuildCorner) { (a->x_m + b->x_m) / 2, (a->y_m + b->y_m) / 2, a->rise_m / 2, a->steps / 2 };
  a->rise_m /= 2;
  a->steps -= middle.steps;
  g_array_insert_val (build->corners, longest + 1, middle);
  save (self, build, _("a corner more"));
}

/* Gates on both of its sides go, too: where they stood there is no fence any more. */
static void
less_cb (SteadDrawingView *self)
{
  g_autoptr(SteadBuild) build = read_build (self);
  int chosen = stead_outline_view_get_chosen (self->plan);
  guint n, before;

  if (chosen < 0)
    {
      stead_desk_say (self->desk, _("Choose a corner of the plan first."), FALSE);
      return;
    }
  if (build == NULL || build->corners->len <= 3 || chosen >= (int) build->corners->len)
    return;
  n = build->corners->len;
  before = ((guint) chosen + n - 1) % n;
  for (guint i = build->gates->len; i > 0; i--)
    {
      SteadFenceGate *gate = &g_array_index (build->gates, SteadFenceGate, i - 1);

      if (gate->side == (gsize) chosen || gate->side == before)
        g_array_remove_index (build->gates, i - 1);
      else if (gate->side > (gsize) chosen)
        gate->side--;
    }
  g_array_remove_index (build->corners, (guint) chosen);
  save (self, build, _("a corner less"));
}

static void
sides_cb (SteadDrawingView *self)
{
  stead_sides_dialog_show (GTK_WIDGET (self), self->desk, self->build_id);
}

static void
gates_cb (SteadDrawingView *self)
{
  stead_gates_dialog_show (GTK_WIDGET (self), self->desk, self->build_id);
}

static void
shelter_cb (SteadDrawingView *self)
{
  stead_shelter_dialog_show (GTK_WIDGET (self), self->desk, self->build_id);
}

static void
room_cb (SteadDrawingView *self)
{
  stead_room_dialog_show (GTK_WIDGET (self), self->desk, self->build_id);
}

static void
fence_cb (SteadDrawingView *self)
{
  stead_fence_dialog_show (GTK_WIDGET (self), self->desk, self->build_id);
}

static void
permit_cb (SteadDrawingView *self)
{
  stead_permit_dialog_show (GTK_WIDGET (self), self->desk, self->build_id);
}

/* --- the object ---------------------------------------------------------------------- */

static void
stead_drawing_view_dispose (GObject *object)
{
  SteadDrawingView *self = STEAD_DRAWING_VIEW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_DRAWING_VIEW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_drawing_view_parent_class)->dispose (object);
}

static void
stead_drawing_view_class_init (SteadDrawingViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_OUTLINE_VIEW);
  g_type_ensure (STEAD_TYPE_WRAP_LAYOUT);
  G_OBJECT_CLASS (klass)->dispose = stead_drawing_view_dispose;
  signals[SENTENCE] = g_signal_new ("sentence", STEAD_TYPE_DRAWING_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                    G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("fund/stead-drawing-view.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadDrawingView, plan);
  gtk_widget_class_bind_template_child (widget_class, SteadDrawingView, drawn);
  gtk_widget_class_bind_template_child (widget_class, SteadDrawingView, shelter);
  gtk_widget_class_bind_template_child (widget_class, SteadDrawingView, more);
  gtk_widget_class_bind_template_child (widget_class, SteadDrawingView, less);
  gtk_widget_class_bind_template_child (widget_class, SteadDrawingView, room);
  gtk_widget_class_bind_template_child (widget_class, SteadDrawingView, rooms);
  gtk_widget_class_bind_template_child (widget_class, SteadDrawingView, care);
  gtk_widget_class_bind_template_child (widget_class, SteadDrawingView, cautions);
  gtk_widget_class_bind_template_callback (widget_class, moving_cb);
  gtk_widget_class_bind_template_callback (widget_class, drawn_cb);
  gtk_widget_class_bind_template_callback (widget_class, corner_cb);
  gtk_widget_class_bind_template_callback (widget_class, less_cb);
  gtk_widget_class_bind_template_callback (widget_class, sides_cb);
  gtk_widget_class_bind_template_callback (widget_class, gates_cb);
  gtk_widget_class_bind_template_callback (widget_class, shelter_cb);
  gtk_widget_class_bind_template_callback (widget_class, room_cb);
  gtk_widget_class_bind_template_callback (widget_class, fence_cb);
  gtk_widget_class_bind_template_callback (widget_class, permit_cb);
}

static void
stead_drawing_view_init (SteadDrawingView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
