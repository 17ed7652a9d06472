/* stead-skills-pane.h - what one person can do, and what shows it. */
#pragma once

#include "app/show/stead-pick-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_SKILLS_PANE (stead_skills_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadSkillsPane, stead_skills_pane, STEAD, SKILLS_PANE, SteadPickPane)

G_END_DECLS
