/* stead-joint-view.h - one cost shared by what comes of it, several ways side by side. */
#pragma once

#include "app/price/stead-view.h"

G_BEGIN_DECLS

#define STEAD_TYPE_JOINT_VIEW (stead_joint_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadJointView, stead_joint_view, STEAD, JOINT_VIEW, SteadView)

GtkWidget *stead_joint_view_new (void);

G_END_DECLS
