#include "kdl_chain.h"

#include <kdl/chain.hpp>
#include <kdl/chainidsolver_recursive_newton_euler.hpp>
#include <memory>

namespace {

enum { VIRTUAL = 6 };

KDL::Vector vector_of(const double v[3])
{
	return KDL::Vector(v[0], v[1], v[2]);
}

// the library's order is xx yy zz xy xz yz, ours xx yy zz xy yz xz
KDL::RigidBodyInertia body_of(double mass, const double centre[3], const double i[6])
{
	KDL::RotationalInertia about_centre(i[0], i[1], i[2], i[3], i[5], i[4]);
	return KDL::RigidBodyInertia(mass, vector_of(centre), about_centre);
}

KDL::Joint joint_of(const struct link &link)
{
	return KDL::Joint(link.kind == JOINT_REVOLUTE ? KDL::Joint::RotZ : KDL::Joint::TransZ);
}

// A segment of the library is its joint, then a fixed frame, and its body stands in the frame at the end.
// Standard DH fits at once; the other two need a fixed frame first.
void add_link(KDL::Chain &out, enum chain_convention convention, const struct link &link,
              const KDL::RigidBodyInertia &body)
{
	if (convention == CHAIN_STANDARD_DH) {
		KDL::Frame behind = KDL::Frame::DH(link.a, link.alpha, link.d, link.theta);
		out.addSegment(KDL::Segment(joint_of(link), behind, body));
		return;
	}
	const double *r = link.rotation;
	KDL::Frame before(KDL::Rotation(r[0], r[1], r[2], r[3], r[4], r[5], r[6], r[7], r[8]),
	                  vector_of(link.position));
	if (convention == CHAIN_MODIFIED_DH)
		before = KDL::Frame::DH_Craig1989(link.a, link.alpha, link.d, link.theta);
	out.addSegment(KDL::Segment(KDL::Joint(KDL::Joint::None), before));
	out.addSegment(KDL::Segment(joint_of(link), KDL::Frame::Identity(), body));
}

void add_ground(KDL::Chain &out)
{
	static const KDL::Joint::JointType ground[VIRTUAL] = {
		KDL::Joint::TransX, KDL::Joint::TransY, KDL::Joint::TransZ,
		KDL::Joint::RotX, KDL::Joint::RotY, KDL::Joint::RotZ};
	for (KDL::Joint::JointType type : ground)
		out.addSegment(KDL::Segment(KDL::Joint(type)));
}

// The base as it is mounted: a fixed frame; none where the nine numbers are all zero.
void add_mounting(KDL::Chain &out, const double r[9])
{
	KDL::Rotation turn(r[0], r[1], r[2], r[3], r[4], r[5], r[6], r[7], r[8]);
	bool any = false;
	for (int i = 0; i < 9; i++)
		any = any || r[i] != 0;
	if (any)
		out.addSegment(KDL::Segment(KDL::Joint(KDL::Joint::None), KDL::Frame(turn)));
}

KDL::Chain chain_of(const struct chain *from, enum kdl_ground ground)
{
	KDL::Chain out;
	if (ground == KDL_FELT)
		add_ground(out);
	add_mounting(out, from->mounting);
	for (size_t i = 0; i < from->count; i++) {
		const struct link &link = from->link[i];
		KDL::RigidBodyInertia body = body_of(link.mass, link.centre, link.inertia);
		if (i + 1 == from->count)
			body = body + body_of(from->payload_mass, from->payload_centre,
			                      from->payload_inertia);
		add_link(out, from->convention, link, body);
	}
	return out;
}

} // namespace

struct kdl_chain {
	unsigned before;         // joints of the ground
	KDL::Chain chain;
	KDL::ChainIdSolver_RNE solver;
	KDL::JntArray q, speed, acceleration, torque;
	KDL::Wrenches external;

	kdl_chain(const struct chain *from, enum kdl_ground ground)
	    : before(ground == KDL_FELT ? VIRTUAL : 0), chain(chain_of(from, ground)),
	      solver(chain, vector_of(from->gravity)),
	      q(chain.getNrOfJoints()), speed(chain.getNrOfJoints()),
	      acceleration(chain.getNrOfJoints()), torque(chain.getNrOfJoints()),
	      external(chain.getNrOfSegments(), KDL::Wrench::Zero())
	{
	}
};

struct kdl_chain *kdl_chain_open(const struct chain *chain, enum kdl_ground ground)
{
	return new kdl_chain(chain, ground);
}

void kdl_chain_close(struct kdl_chain *chain)
{
	delete chain;
}

bool kdl_chain_wrench(struct kdl_chain *chain, const double q[], const double speed[],
                      const double acceleration[], struct base_wrench *out, double torque[])
{
	unsigned before = chain->before, count = chain->chain.getNrOfJoints() - before;
	for (unsigned i = 0; i < count; i++) {
		chain->q(before + i) = q[i];
		chain->speed(before + i) = speed[i];
		chain->acceleration(before + i) = acceleration[i];
	}
	if (chain->solver.CartToJnt(chain->q, chain->speed, chain->acceleration, chain->external,
	                            chain->torque) < 0)
		return false;
	// what the ground's joints must give is on the arm; on the base it is the opposite
	for (unsigned i = 0; before && i < 3; i++) {
		out->force[i] = -chain->torque(i);
		out->moment[i] = -chain->torque(3 + i);
	}
	for (unsigned i = 0; torque && i < count; i++)
		torque[i] = chain->torque(before + i);
	return true;
}
