/* stead-price-figure.h - the charts of Price, out of its answers. */
#pragma once

#include "answer/stead-best-use.h"
#include "answer/stead-how-sure-answer.h"
#include "answer/stead-joint-answer.h"
#include "answer/stead-price-choice.h"
#include "answer/stead-together-answer.h"
#include "answer/stead-what-if-answer.h"
#include "paper/stead-figure.h"

G_BEGIN_DECLS

/* Each (transfer full) of a settled answer, which must outlive it. */

/* One cost, shared in the ways that can be used. */
SteadFigure *stead_joint_figure_new    (const SteadJointAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;
/* The path of profit of all products, one after the other and all at once. */
SteadFigure *stead_together_figure_new (const SteadTogether *answer) G_GNUC_WARN_UNUSED_RESULT;
/* What was sold at which price, and the line through it.  (nullable): nothing was. */
SteadFigure *stead_choice_figure_new   (const SteadPriceChoice *answer) G_GNUC_WARN_UNUSED_RESULT;
/* What each product brings at its best.  (nullable): nothing could be worked out. */
SteadFigure *stead_best_use_figure_new (const SteadBestUse *answer) G_GNUC_WARN_UNUSED_RESULT;
/* How far profit lies apart when one thing changes.  (nullable): nothing moves it. */
SteadFigure *stead_swing_figure_new    (const SteadWhatIf *answer) G_GNUC_WARN_UNUSED_RESULT;
/* How the seasons turn out, and which range matters most.  (nullable): none could be drawn. */
SteadFigure *stead_spread_figure_new   (const SteadHowSure *answer) G_GNUC_WARN_UNUSED_RESULT;
SteadFigure *stead_range_figure_new    (const SteadHowSure *answer) G_GNUC_WARN_UNUSED_RESULT;

/* The height, points, that a printed one takes. */
double       stead_joint_figure_height    (const SteadJointAnswer *answer);
double       stead_best_use_figure_height (const SteadBestUse *answer);
double       stead_swing_figure_height    (const SteadWhatIf *answer);
double       stead_range_figure_height    (const SteadHowSure *answer);

G_END_DECLS
